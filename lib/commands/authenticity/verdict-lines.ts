import type { FileVerdict } from "@/lib/documents/authenticity/verdict";
import { verdictWords } from "@/lib/documents/authenticity/verdict-words";
import type { WholeVerdict } from "@/lib/documents/authenticity/whole-verdict";
import type { KeyList } from "@/lib/domain/seal/key-list";

/** What the page says, as lines for a terminal. */
export const verdictLines = (
  name: string,
  whole: WholeVerdict,
  file: FileVerdict,
  keys: KeyList,
): readonly string[] => {
  const words = verdictWords(whole, file);
  const states = Object.values(words.states);
  const width = Math.max(...states.map(({ length }) => length));
  return [
    whole.title,
    whole.reason,
    `${name}: ${words.formal}`,
    "",
    ...words.facts.map(({ label, value }) => `${label}: ${value}`),
    ...(words.key ? [words.key.text, `  ${words.key.fingerprint}`] : []),
    keys.keys.length > 0
      ? `Keys of ${keys.laboratory} as of ${keys.issuedAt.slice(0, 10)}.`
      : "No keys of any laboratory were at hand.",
    "",
    ...whole.checks.map(
      ({ label, state, text }) => `${words.states[state].padEnd(width)}  ${label}: ${text}`,
    ),
  ];
};
