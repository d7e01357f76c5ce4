import { own } from "@/lib/domain/dcc/terms";
import type { MeasuredSet } from "./measured-set";
import { inLargerUnit, plainNumber } from "./plain-number";
import { column, oneTemperature, quantity, single, temperatures } from "./quantities";
import { caption, nameOf, rich, unspoken, type Voice } from "./voice";
import type { Word } from "./words";
import { element, type Xml } from "./xml";

const condition = (
  voice: Voice,
  word: Word,
  refType: string,
  inside: readonly (Xml | null)[],
  status: string | null = null,
): Xml =>
  element(
    "dcc:influenceCondition",
    [
      nameOf(caption(voice, word)),
      status === null ? null : element("dcc:status", status),
      element("dcc:data", inside),
    ],
    { refType },
  );

const text = (sentences: readonly (readonly Xml[])[]): Xml | null => rich("dcc:text", sentences);

const isNumber = (written: string): boolean => /^-?\d+(?:\.\d+)?$/.test(plainNumber(written));

/** Kept as a number where it is one, "380 mm" as 0.380 m; else in its words. */
const immersion = (voice: Voice, said: string): Xml | null => {
  if (said.trim() === "") return null;
  const millimetre = /^(.+) mm$/.exec(said.trim())?.[1] ?? "";
  const inside = isNumber(millimetre)
    ? quantity(
        "gp_immersionDepth",
        caption(voice, "immersion"),
        single(inLargerUnit(plainNumber(millimetre), 3), "\\metre"),
      )
    : text([voice.contents(said)]);
  return condition(voice, "immersion", "gp_immersionDepth", [inside]);
};

const junction = (voice: Voice, celsius: string): Xml =>
  condition(voice, "junctionCondition", own("referenceJunction"), [
    isNumber(celsius)
      ? quantity(own("referenceJunction"), caption(voice, "junctionCondition"), oneTemperature(celsius))
      : text([voice.contents(celsius)]),
  ]);

/** The room as recorded: one figure, or the lowest and the highest. */
const room = (voice: Voice, told: MeasuredSet["run"]["room"]): readonly (Xml | null)[] =>
  told === undefined
    ? []
    : [
        condition(voice, "ambientTemperature", own("ambientTemperature"), [
          quantity(
            own("ambientTemperature"),
            caption(voice, "ambientTemperature"),
            temperatures(told.celsius),
          ),
        ]),
        told.percent === undefined
          ? null
          : condition(voice, "ambientHumidity", own("ambientHumidity"), [
              quantity(
                own("ambientHumidity"),
                caption(voice, "ambientHumidity"),
                column(told.percent.map(plainNumber), "\\percent"),
              ),
            ]),
      ];

/** 7.8.4.1 d: annealing is what comes nearest to an adjustment of a thermocouple. */
const setStatus = (voice: Voice, kind: MeasuredSet["kind"]): Xml | null =>
  kind === null
    ? null
    : condition(
        voice,
        "set",
        own("set"),
        [text([caption(voice, kind === "as-received" ? "asReceived" : "afterAnneal")])],
        kind === "as-received" ? "beforeAdjustment" : "afterAdjustment",
      );

/** 7.8.4.1 b: what influences the results of one set. `isAnnealed`: the certificate tells before from after. */
export const conditions = (voice: Voice, set: MeasuredSet, isAnnealed: boolean): Xml => {
  const { run } = set;
  return element("dcc:influenceConditions", [
    setStatus(voice, isAnnealed ? set.kind : null),
    junction(voice, run.junctionCelsius),
    immersion(voice, run.immersion),
    ...room(voice, run.room),
    condition(voice, "run", own("conditions"), [
      text([[unspoken([run.number, run.furnace, run.configuration, run.place].join("; "))]]),
    ]),
    condition(voice, "conditions", own("conditions"), [text(set.conditions.map(voice.contents))]),
  ]);
};

/** Of what is derived from other results of the same certificate. */
export const conditionsOfDerived = (voice: Voice): Xml =>
  element("dcc:influenceConditions", [
    condition(voice, "conditions", own("conditions"), [text([caption(voice, "asWithResults")])]),
  ]);
