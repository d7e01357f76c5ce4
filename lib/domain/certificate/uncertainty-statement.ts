import type { EvaluatedCoverage, MeasuredPoint } from "../evidence/evaluation";
import type { TextKey } from "./catalogue/catalogue";
import { type Message, say, sayAll } from "./catalogue/message";

type Covered = Pick<MeasuredPoint, "nominalCelsius" | "coverage" | "scope">;
type WriteTemperature = (celsius: number) => string;

/** Rows may differ in k and its method; each method is then named with its rows. */
const methods: Readonly<Record<EvaluatedCoverage["method"], TextKey>> = {
  student: "u.method.student",
  "one-dominant-rectangle": "u.method.one-dominant-rectangle",
  "two-dominant-rectangles": "u.method.two-dominant-rectangles",
  "monte-carlo": "u.method.monte-carlo",
};

const percent = (probability: number): string => String(Number((probability * 100).toFixed(2)));

type Group = { readonly method: Message; readonly points: readonly Covered[] };

/** One text for each method and probability, with the points it holds for, in the order of the results. */
const byMethod = (points: readonly Covered[]): readonly Group[] => {
  const groups = new Map<string, Group>();
  for (const point of points) {
    const { method, probability } = point.coverage;
    const key = `${method} ${percent(probability)}`;
    const known = groups.get(key)?.points ?? [];
    groups.set(key, {
      method: say("u.with-probability", { method: say(methods[method]), percent: percent(probability) }),
      points: [...known, point],
    });
  }
  return [...groups.values()];
};

const covers = (points: readonly Covered[], listed: (some: readonly Covered[]) => string): Message[] => {
  const multiplied = say("u.multiplied");
  if (points.every(({ coverage }) => coverage.method === "student"))
    return [say("u.all-student", { multiplied })];
  const groups = byMethod(points);
  return [
    say("u.alone", { multiplied }),
    ...groups.map(({ method, points: some }) =>
      groups.length === 1
        ? say("u.in-every-row", { method })
        : say("u.at-rows", { points: listed(some), method }),
    ),
  ];
};

/**
 * 7.8.4.1 a: what U is and what it covers, by the method of the points. EA-4/02, clause 6 (number from memory); JCGM
 * 100:2008, annex G; for the capability ILAC-P14:09/2020, 5.
 */
export const uncertaintyStatement = (points: readonly Covered[], at: WriteTemperature): Message => {
  const listed = (some: readonly Covered[]): string =>
    some.map(({ nominalCelsius }) => at(nominalCelsius)).join(", ");
  const raised = points.filter(({ scope }) => scope.isRaised);
  return sayAll([
    ...covers(points, listed),
    ...(raised.length === 0 ? [] : [say("u.capability", { points: listed(raised) })]),
    say("u.basis"),
  ]);
};
