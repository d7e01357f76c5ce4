import type { FileVerdict } from "../verdict";
import { verdictWords } from "../verdict-words";
import type { WholeVerdict } from "../whole-verdict";
import { element } from "./element";

const signs = { passed: "●", failed: "■", unknown: "◇", skipped: "–" } as const;
const kinds = { good: "●", look: "▲", bad: "■" } as const;

/** The verdict with its reason, and each check by word and sign. */
export const showVerdict = (name: string, whole: WholeVerdict, file: FileVerdict): HTMLElement => {
  const words = verdictWords(whole, file);
  const facts = words.facts.flatMap(({ label, value }) => [
    element("dt", {}, label),
    element("dd", {}, value),
  ]);
  const checks = whole.checks.map(({ label, state, text }) =>
    element(
      "li",
      { "data-state": state },
      element("span", { class: "state" }, `${signs[state]} ${words.states[state]}`),
      element("div", {}, element("strong", {}, label), element("p", {}, text)),
    ),
  );
  return element(
    "section",
    { class: "verdict", "data-kind": whole.kind, "aria-label": "Verdict on the file" },
    element("h2", {}, `${kinds[whole.kind]} ${whole.title}`),
    element("p", {}, whole.reason),
    element("p", { class: "quiet" }, `${name}: ${words.formal}`),
    ...(facts.length > 0 ? [element("dl", {}, ...facts)] : []),
    ...(words.key
      ? [element("p", {}, words.key.text), element("p", {}, element("code", {}, words.key.fingerprint))]
      : []),
    element("ul", {}, ...checks),
  );
};
