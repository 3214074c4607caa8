// The few functions of jstat 1.9.6 that are used here; the package brings no types of its own.
declare module 'jstat' {
  interface JStat {
    /** Regularised incomplete beta function I_x(a, b). */
    ibeta(x: number, a: number, b: number): number;
    /** Error function. */
    erf(x: number): number;
    readonly normal: { inv(p: number, mean: number, sd: number): number };
    readonly studentt: { inv(p: number, df: number): number };
    readonly chisquare: { cdf(x: number, df: number): number; inv(p: number, df: number): number };
    readonly centralF: { cdf(x: number, df1: number, df2: number): number; inv(p: number, df1: number, df2: number): number };
  }
  const jStat: JStat;
  export default jStat;
}
