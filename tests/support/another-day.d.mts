export declare function moveClock(by: number): void
