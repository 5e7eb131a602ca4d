import { describe, expect, it } from 'vitest'
import type { News, SummaryDesk } from '#main/summary/desk'
import { KnownRows } from '#main/summary/known-rows'

const progress = { sites: 0, left: 0, running: false, unread: 0, unreadSites: [] }
const news: News = { run: 'one', rows: [], gone: [], since: 3, more: false, progress }

describe('the rows at hand', () => {
  it('are looked at again after a disk that failed once', async () => {
    let asked = 0
    const rows = async (): Promise<News> => {
      asked += 1
      if (asked === 1) throw new Error('the disk is away')
      return news
    }
    const known = new KnownRows({ rows } as unknown as SummaryDesk)
    await expect(known.refresh(null)).rejects.toThrow('the disk is away')
    expect(await known.refresh(null)).toEqual(progress)
    expect(known.version).toBe('one.3')
  })
})
