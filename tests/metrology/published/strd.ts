import { leastSquares } from "@/lib/metrology/number/least-squares";
import { mean } from "@/lib/metrology/number/mean";
import { sum } from "@/lib/metrology/number/sum";
import { referenceDatasets } from "../vectors/strd-datasets";
import { strdRegression } from "../vectors/strd-regression";
import { strdUnivariate, univariateDatasets } from "../vectors/strd-univariate";
import { tableChecks } from "./check";
import { unwrap } from "./unwrap";

export const strdChecks = [
  ...tableChecks(strdRegression, ({ dataset, quantity, index }) => {
    const { design, response } = referenceDatasets[dataset];
    const fit = unwrap(
      leastSquares(
        design,
        response,
        response.map(() => 1),
      ),
    );
    const variance = fit.chiSquare / fit.degreesOfFreedom;
    switch (quantity) {
      case "estimate":
        return fit.coefficients[index] as number;
      case "deviation":
        return Math.sqrt(variance * ((fit.inverseNormal[index] as readonly number[])[index] as number));
      case "residual-deviation":
        return Math.sqrt(variance);
      case "residual-squares":
        return fit.chiSquare;
    }
  }),
  ...tableChecks(strdUnivariate, ({ dataset, quantity }) => {
    const values: readonly number[] = univariateDatasets[dataset];
    const average = mean(values);
    if (quantity === "mean") return average;
    return Math.sqrt(sum(values.map((x) => (x - average) * (x - average))) / (values.length - 1));
  }),
];
