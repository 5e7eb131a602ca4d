declare module 'jstat' {
  interface Continuous {
    inv(p: number, df: number): number
    cdf(x: number, df: number): number
  }
  const library: { readonly jStat: { readonly studentt: Continuous } }
  export default library
}
