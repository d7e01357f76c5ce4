/** Nearest float64 values, written out: `Math.PI` and its kin stay out of metrology with the rest of `Math`. */
// biome-ignore lint/suspicious/noApproximativeNumericConstant: it is the very float64
export const PI = 3.141592653589793;
// biome-ignore lint/suspicious/noApproximativeNumericConstant: it is the very float64
export const SQRT_2 = 1.4142135623730951;
export const SQRT_3 = 1.7320508075688772;
export const SQRT_PI = 1.772453850905516;
