import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { CarriedEvidence } from "../numbers/carried-evidence";
import { type ComputedNumbers, computeNumbers } from "../numbers/compute-numbers";
import { numbersWords } from "../numbers/numbers-words";
import { element } from "./element";

const kinds = { good: "●", look: "▲", bad: "■" } as const;

const showDifferences = ({ differences }: ComputedNumbers): readonly HTMLElement[] =>
  differences.length === 0
    ? []
    : [
        element(
          "ul",
          {},
          ...differences.map(({ table, row, column, printed, recomputed }) =>
            element(
              "li",
              { "data-state": "failed" },
              element("span", {}, `${table}, ${row}`),
              element(
                "span",
                {},
                `${column}: printed ${printed || "nothing"}, computed again ${recomputed || "nothing"}`,
              ),
            ),
          ),
        ),
      ];

const showNumbers = (number: string, computed: ComputedNumbers): HTMLElement => {
  const { kind, title, sentences } = numbersWords(number, computed);
  return element(
    "section",
    { class: "verdict", "data-kind": kind, "aria-label": "Verdict on the numbers" },
    element("h2", {}, `${kinds[kind]} ${title}`),
    ...sentences.map((sentence) => element("p", {}, sentence)),
    ...showDifferences(computed),
  );
};

/** Where the numbers of a document that passed are computed again: from what it carries, or from a file beside it. */
export const numbersPart = (content: CertificateContent, evidence: CarriedEvidence): HTMLElement => {
  const answer = element("div", { "aria-live": "polite" });
  const compute = async (bytes: Uint8Array): Promise<void> => {
    answer.replaceChildren(element("p", {}, "Computing …"));
    const shown = await computeNumbers({ content, evidence }, bytes)
      .then((computed) => showNumbers(content.number, computed))
      .catch((error: unknown) =>
        element(
          "p",
          { class: "problem" },
          `Nothing was computed: ${error instanceof Error ? error.message : String(error)}`,
        ),
      );
    answer.replaceChildren(shown);
  };
  if (evidence.kind === "attached") {
    const button = element("button", { type: "button" }, "Compute every number again");
    button.addEventListener("click", () => void compute(evidence.bytes));
    return element("div", { class: "numbers" }, element("h2", {}, "The numbers"), button, answer);
  }
  const input = element("input", { id: "evidence", type: "file", accept: ".json,application/json" });
  input.addEventListener("change", async () => {
    const [file] = (input as HTMLInputElement).files ?? [];
    if (file) await compute(new Uint8Array(await file.arrayBuffer()));
  });
  return element(
    "div",
    { class: "numbers" },
    element("h2", {}, "The numbers"),
    element(
      "label",
      { for: "evidence" },
      `The evidence file (JSON) of ${content.number}: its customer finds it beside the certificate`,
    ),
    input,
    answer,
  );
};
