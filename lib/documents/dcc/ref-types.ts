import { type OwnTerm, own, ownNamespace, ownTerms, termsOfTheRoom } from "@/lib/domain/dcc/terms";
import { caption, nameOf, rich, unspoken, type Voice } from "./voice";
import type { Word } from "./words";
import { element, type Xml } from "./xml";

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
export const refTypeDefinitions = (voice: Voice, tellsTheRoom: boolean): Xml =>
  element("dcc:refTypeDefinitions", [
    definition(voice, "vocabularyBasic", "basic", published, null),
    definition(voice, "vocabularyGoodPractice", "gp", published, null),
    definition(voice, "vocabularyOwn", ownNamespace, "urn:emfolio:thermocouple-terms:1", {
      description: (Object.keys(ownTerms) as OwnTerm[])
        .filter((term) => tellsTheRoom || !termsOfTheRoom.has(term))
        .map((term) => `${own(term)}: ${ownTerms[term]}`),
      release: "1.0.0",
    }),
  ]);
