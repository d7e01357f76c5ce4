import { caption, nameOf, rich, unspoken, type Voice } from "./voice";
import type { Word } from "./words";
import { element, type Xml } from "./xml";

/** Our own vocabulary: nothing published names what a comparison of thermocouples yields. */
const meanings = {
  contentHash: "SHA-256 over the RFC 8785 form of the certificate's content, lower-case hexadecimal.",
  authenticity: "Address at which anyone may check the certificate.",
  setpoint: "Temperature ordered; the values of a row hold at it.",
  emf: "Emf of the thermocouple at the setpoint, its reference junction at 0 °C.",
  emfDeviation: "Emf minus the reference function of the type, at the setpoint.",
  correction: "Negative of the error, to be added to the indication.",
  conformityState:
    "pass, conditional-pass, conditional-fail, fail; not-decidable: U leaves no acceptance zone; no-tolerance-defined; no-statement: none was agreed.",
  conformityProbability: "Probability that the true error lies within the tolerance, as printed.",
  scope: "Whether a result lies inside or outside the laboratory's scope of accreditation.",
  source: "own: obtained by this laboratory; external: by the provider named in the statements.",
  referenceJunction: "Temperature of the reference junction during the measurement.",
  conditions: "Further conditions that influence the results.",
  set: "Whether results were obtained before or after annealing.",
  coefficient: "Coefficient of D(t), the deviation of the emf in µV for t in °C.",
  corrections: "Corrections by temperature, from the deviation function.",
  change: "Error after annealing minus error as received.",
  lot: "Average and spread of the errors of several items.",
  budget: "Lines of the uncertainty budget of one result.",
  statement: "A statement of ISO/IEC 17025:2017, 7.8, by its clause.",
  opinion: "An opinion or interpretation, 7.8.7; no result.",
} as const;

export type OwnTerm = keyof typeof meanings;
export const own = (term: OwnTerm): string => `emfolio_${term}`;

const definition = (
  voice: Voice,
  word: Word,
  namespace: string,
  link: string,
  said: { readonly description: readonly string[]; readonly release: string } | null,
): Xml =>
  element("dcc:refTypeDefinition", [
    nameOf(caption(voice, word)),
    said
      ? rich(
          "dcc:description",
          said.description.map((line) => [unspoken(line)]),
        )
      : null,
    element("dcc:namespace", namespace),
    element("dcc:link", link),
    said ? element("dcc:release", said.release) : null,
  ]);

const published = "https://dccwiki.ptb.de/en/refTypes";

/** Where the words in refType come from: two published vocabularies, and our own with the meaning of each term. */
export const refTypeDefinitions = (voice: Voice): Xml =>
  element("dcc:refTypeDefinitions", [
    definition(voice, "vocabularyBasic", "basic", published, null),
    definition(voice, "vocabularyGoodPractice", "gp", published, null),
    definition(voice, "vocabularyOwn", "emfolio", "urn:emfolio:thermocouple-terms:1", {
      description: Object.entries(meanings).map(([term, meaning]) => `emfolio_${term}: ${meaning}`),
      release: "1.0.0",
    }),
  ]);
