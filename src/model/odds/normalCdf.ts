/** Beyond this many standard deviations the rational approximation gives way to the tail's continued fraction. */
const TAIL_FROM = 7.07106781186547;
const ROOT_OF_2_PI = Math.sqrt(2 * Math.PI);

/**
 * Distribution function of the standard normal, Φ(z). [0-1]
 *
 * Equation   for |z| under 7.07 e^(−z²/2) times a ratio of polynomials of degree 6 and 7 in |z|, beyond it five steps of
 *            the tail's continued fraction; Φ(z) = 1 − Φ(−z)
 * Valid      any z; absolute error under 5·10⁻¹⁶, relative error of the lower tail under 10⁻⁸
 * Source     algorithm 5666 of "Computer Approximations", Wiley, 1968; coefficients from memory, so held to a library's
 *            function by the test
 * Why        the daily loop's own: three times as fast as that library's function, which checks its arguments and
 *            brings an exponential of its own
 * Checked    test/model/normalCdf.test.ts
 * @example normalCdf(1.96) // 0.975002
 */
export function normalCdf(z: number): number {
  const a = Math.abs(z);
  const density = Math.exp((-a * a) / 2);
  let lower: number;
  if (a < TAIL_FROM) {
    let top = 3.52624965998911e-2 * a + 0.700383064443688;
    top = top * a + 6.37396220353165;
    top = top * a + 33.912866078383;
    top = top * a + 112.079291497871;
    top = top * a + 221.213596169931;
    top = top * a + 220.206867912376;
    let bottom = 8.83883476483184e-2 * a + 1.75566716318264;
    bottom = bottom * a + 16.064177579207;
    bottom = bottom * a + 86.7807322029461;
    bottom = bottom * a + 296.564248779674;
    bottom = bottom * a + 637.333633378831;
    bottom = bottom * a + 793.826512519948;
    bottom = bottom * a + 440.413735824752;
    lower = (density * top) / bottom;
  } else {
    lower = density / (ROOT_OF_2_PI * (a + 1 / (a + 2 / (a + 3 / (a + 4 / (a + 0.65))))));
  }
  return z > 0 ? 1 - lower : lower;
}
