import { reportValue } from "@/lib/metrology/reporting/report-value";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import { eaS5Emf, eaS5Furnace, eaS5Inputs, eaS5Remembered } from "../vectors/ea-4-02-s5";
import { checks } from "./check";
import { unwrap } from "./unwrap";

const { CS, CS0, CX, CX0 } = eaS5Inputs;
const rectangular = (halfWidth: number) => standardUncertainty({ kind: "rectangular", halfWidth });
const stated = (expanded: number) => standardUncertainty({ kind: "expanded", expanded, coverageFactor: 2 });

const furnace = {
  tS: 0.1,
  calibration: stated(0.3),
  voltmeter: CS * stated(2),
  resolution: CS * rectangular(0.5),
  scanner: CS * rectangular(2),
  junction: -(CS / CS0) * rectangular(0.1),
  drift: rectangular(0.3),
  uniformity: rectangular(1),
};

const combined = (effects: Readonly<Record<string, number>>): number =>
  combine(Object.values(effects).map((effect) => ({ effect, degreesOfFreedom: null }))).standardUncertainty;

const uTX = combined(furnace);

const emfWith = (uTemperature: number) => ({
  indication: 1.6,
  emfVoltmeter: stated(2),
  emfResolution: rectangular(0.5),
  emfScanner: rectangular(2),
  cable: rectangular(5),
  temperature: uTemperature / CX,
  emfJunction: -rectangular(0.1) / CX0,
});

const emf = emfWith(uTX);
const uVX = combined(emf);
// The calibration point less the furnace: the example's own result needs this sign, its budget prints the other.
const valueVX = 36_248 + (1000 - 1000.5) / CX;

const own = <Name extends string>(effects: Readonly<Record<Name, number>>) =>
  Object.fromEntries(Object.entries<number>(effects).map(([name, effect]) => [name, () => effect])) as Record<
    Name,
    () => number
  >;

export const eaS5Checks = [
  ...checks(eaS5Furnace, {
    ...own(furnace),
    combinedTX: () => uTX,
    combinedTXFull: () => uTX,
    expandedTX: () => Number(unwrap(reportValue(1000.5, 2 * uTX, 2)).expanded),
  }),
  ...checks(eaS5Emf, {
    ...own(emf),
    combinedVX: () => uVX,
    combinedVXFull: () => combined(emfWith(0.641)),
    expandedVX: () => Number(unwrap(reportValue(valueVX, 2 * uVX, 1)).expanded),
  }),
  ...checks(eaS5Remembered, {
    reported: () => Number(unwrap(reportValue(valueVX, 2 * uVX, 1)).value),
    computed: () => valueVX,
  }),
];
