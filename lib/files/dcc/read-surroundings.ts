import type {
  DccCondition,
  DccEquipment,
  DccMethod,
  DccReach,
} from "@/lib/domain/calibration/dcc-certificate";
import { dataOf } from "./read-data";
import { identificationsOf, nameOf, referralOf, refTypesOf, textOf, wordOf, wordsOf } from "./read-parts";
import { childNamed, childrenNamed, placeOf, type XmlElement } from "./xml-element";

type Told = { readonly element: XmlElement; readonly reach: DccReach };

const reaches: Readonly<Record<string, DccReach>> = {
  measurementResults: "all-results",
  measurementResult: "result",
  list: "table",
  quantity: "quantity",
};

const inner = ["measurementResult", "results", "result", "data", "list", "quantity"];

/** Every `list/member` from the measurement results down, with what it speaks of. */
const told = (element: XmlElement, list: string, member: string): readonly Told[] => [
  ...childrenNamed(childNamed(element, list), member).map((found) => ({
    element: found,
    reach: reaches[element.name] ?? "result",
  })),
  ...element.children
    .filter(({ name }) => inner.includes(name))
    .flatMap((child) => told(child, list, member)),
];

const methodOf = ({ element, reach }: Told): DccMethod => ({
  name: nameOf(element),
  description: textOf(childNamed(element, "description")),
  norms: wordsOf(element, "norm"),
  references: wordsOf(element, "reference"),
  refTypes: refTypesOf(element),
  id: element.attributes.get("id") ?? null,
  reach,
  place: placeOf(element),
});

const equipmentOf = ({ element, reach }: Told): DccEquipment => ({
  name: nameOf(element),
  manufacturer: nameOf(childNamed(element, "manufacturer")),
  model: wordOf(element, "model"),
  identifications: identificationsOf(element),
  certificate: referralOf(childNamed(element, "certificate")),
  refTypes: refTypesOf(element),
  reach,
  id: element.attributes.get("id") ?? null,
  place: placeOf(element),
});

/** By refType first (basic_temperature, gp_immersionDepth, a laboratory's own), then by the words of the name. */
const kindOf = (element: XmlElement): DccCondition["kind"] => {
  const told = [refTypesOf(element).join(" "), ...nameOf(element).map(({ text }) => text)];
  for (const words of told) {
    if (/reference[ _]?junction|cold[ _]?junction|vergleichsstelle/i.test(words)) return "reference-junction";
    if (/immersion|eintauch/i.test(words)) return "immersion";
    if (/ambient|umgebung|humidity|basic_(?:temperature|pressure)/i.test(words)) return "ambient";
  }
  return "other";
};

const conditionOf = ({ element, reach }: Told): DccCondition => ({
  kind: kindOf(element),
  name: nameOf(element),
  description: textOf(childNamed(element, "description")),
  status: wordOf(element, "status"),
  certificate: referralOf(childNamed(element, "certificate")),
  data: dataOf(childNamed(element, "data")),
  refTypes: refTypesOf(element),
  reach,
  place: placeOf(element),
});

/** Methods, equipment and conditions: in 3.0 to 3.2 for one result, its tables and quantities; since 3.3 also for all. */
export const surroundingsOf = (measurement: XmlElement) => ({
  methods: told(measurement, "usedMethods", "usedMethod").map(methodOf),
  equipment: told(measurement, "measuringEquipments", "measuringEquipment").map(equipmentOf),
  conditions: told(measurement, "influenceConditions", "influenceCondition").map(conditionOf),
});
