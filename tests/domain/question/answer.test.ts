import { expect, it } from "vitest";
import { decideAnswer } from "@/lib/domain/question/decide-answer";
import { conditionChoices, insistChoice } from "@/lib/domain/question/labels";

const asked = { choices: [...conditionChoices], isAnswered: false, isSettled: false };
const free = { ...asked, choices: [] };

it.each([
  [asked, { choice: insistChoice, text: "" }, true],
  [asked, { choice: conditionChoices[1], text: "please" }, false],
  [free, { choice: "", text: "at 1000 °C" }, false],
])("takes an answer that was offered, or words where none was", (question, said, insists) => {
  expect(decideAnswer(question, said)).toEqual({ ok: true, value: { insists } });
});

it.each([
  [{ ...asked, isAnswered: true }, { choice: insistChoice, text: "" }, "wrong-state", []],
  [{ ...asked, isSettled: true }, { choice: insistChoice, text: "" }, "wrong-state", []],
  [asked, { choice: "Scrap it", text: "" }, "invalid", ["choice"]],
  [asked, { choice: "", text: "hm" }, "invalid", ["choice"]],
  [free, { choice: "", text: "" }, "invalid", ["text"]],
])("refuses %j answered with %j", (question, said, code, fields) => {
  const answer = decideAnswer(question, said);
  expect(answer.ok ? null : [answer.refusal.code, Object.keys(answer.refusal.fields ?? {})]).toEqual([
    code,
    fields,
  ]);
});
