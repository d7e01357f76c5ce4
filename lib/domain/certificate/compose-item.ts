import type { SensorBuild } from "../sensor/build";
import { type Draft, given, type Message, type Said, say, sayAll } from "./catalogue/message";
import type { CertificateContent } from "./content";
import type { CertificateParts } from "./parts";
import { annealedItem } from "./texts-of-parts";

const protections: Readonly<Record<string, Message>> = {
  "bare-wire": say("protection.bare-wire"),
  "alumina-sheath": say("protection.alumina-sheath"),
  "metal-sheath": say("protection.metal-sheath"),
  other: say("protection.other"),
};

/** What stands about the wires, in the catalogue's words where it is one of the known. */
export const protectionSaid = (protection: string): Said => protections[protection] ?? protection;

const checks = (intake: CertificateParts["intake"]): Message[] => [
  ...(intake.loopResistanceOhm === null
    ? []
    : [say("check.loop", { ohm: String(intake.loopResistanceOhm) })]),
  ...(intake.insulationMegaohm === null
    ? []
    : [say("check.insulation", { megaohm: String(intake.insulationMegaohm) })]),
  { ok: say("check.polarity-ok"), reversed: say("check.polarity-reversed") }[intake.polarity] ??
    say("check.polarity-not-checked"),
  { ok: say("check.type-ok"), "other-type": say("check.type-other") }[intake.typeCheck] ??
    say("check.type-not-checked"),
];

/** A person's words on the condition, or that there are none. */
export const conditionNote = ({ conditionNote: note }: CertificateParts["intake"]): Message =>
  note === "" ? say("item.no-details") : given(note);

/** 7.8.2.1 g. The checks are left out of a simplified report. */
export const composeItem = (
  { sensor, intake }: CertificateParts,
  isSimplified: boolean,
): Draft<CertificateContent["item"]> => ({
  tag: sensor.tag,
  serial: sensor.serial,
  typeLetter: sensor.typeLetter,
  construction: sensor.construction || say("item.construction-not-stated"),
  protection: protectionSaid(sensor.protection),
  condition:
    intake.condition === "as-described"
      ? say("item.condition-as-described")
      : say("item.condition-deviates", { note: conditionNote(intake) }),
  checks: isSimplified ? [] : checks(intake),
  ...(sensor.material ? { material: sensor.material } : {}),
});

const facts = (build: SensorBuild): Said[] => [
  ...(build.highestUsedCelsius === undefined
    ? []
    : [say("history.up-to", { celsius: String(build.highestUsedCelsius) })]),
  ...(build.usedHours === undefined ? [] : [say("history.for", { hours: String(build.usedHours) })]),
  ...(build.deepestUsedMillimetre === undefined
    ? []
    : [say("history.immersed", { millimetre: String(build.deepestUsedMillimetre) })]),
  ...(build.usedIn === undefined ? [] : [say("history.in", { where: given(build.usedIn) })]),
];

const before = (tag: string, build: SensorBuild): Message => {
  const known = facts(build);
  if (build.isUsed || known.length > 0)
    return say("history.used", {
      tag,
      facts: known.length === 0 ? say("history.no-details") : sayAll(known, ", "),
    });
  if (build.isUsed === false) return say("history.unused", { tag });
  return say(build.isHistoryUnknown ? "history.unknown" : "history.not-stated", { tag });
};

/** What heat the item has seen: before it came, as told at intake, and by annealing here; null where nobody was asked. */
export const composeThermalHistory = ({ sensor, build, anneals = [] }: CertificateParts): Message[] | null =>
  build === undefined && anneals.length === 0
    ? null
    : [
        ...(build === undefined ? [] : [before(sensor.tag, build)]),
        ...anneals.map((anneal) => annealedItem(sensor.tag, anneal)),
      ];
