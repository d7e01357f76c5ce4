import type { ValueAndSlope } from "../number/solve-increasing";
import { deviationVariable, type SprtCalibration } from "./sprt-calibration";

/**
 * ΔW(W) = W − W_r and its derivative, pure numbers: ITS-90 (Metrologia 27 (1990) 3), section 3.3,
 * ΔW = (W − 1)·(a + b·x + c·x²) + d·[W − W(Al)]², x = W − 1 or ln W (3.3.1.3), the term in d above the
 * aluminium point only. No range is checked; NaN stays NaN.
 */
export function sprtDeviation(calibration: SprtCalibration, ratio: number): ValueAndSlope {
  const { subrange, a, b, c, d, aluminiumRatio } = calibration;
  const x = deviationVariable(subrange, ratio);
  const xSlope = subrange.variable === "logarithm" ? 1 / ratio : 1;
  const factor = a + x * (b + x * c);
  const above = subrange.hasSilver && ratio > aluminiumRatio ? ratio - aluminiumRatio : 0;
  return {
    value: (ratio - 1) * factor + d * above * above,
    slope: factor + (ratio - 1) * xSlope * (b + 2 * c * x) + 2 * d * above,
  };
}
