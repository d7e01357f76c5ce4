import { expect, it } from "vitest";
import { decideAnswer, decideLinkedAnswer } from "@/lib/domain/question/decide-answer";
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

it("tells a linked answer at once of all that is missing, and takes it with a name", () => {
  const fieldsOf = (said: Parameters<typeof decideLinkedAnswer>[1], question = asked) => {
    const answer = decideLinkedAnswer(question, said);
    return answer.ok ? answer.value : Object.keys(answer.refusal.fields ?? {});
  };
  expect(fieldsOf({ choice: "", text: "", saidByName: " " })).toEqual(["choice", "saidByName"]);
  expect(fieldsOf({ choice: "", text: "", saidByName: "Nora" })).toEqual(["choice"]);
  expect(fieldsOf({ choice: insistChoice, text: "", saidByName: "" })).toEqual(["saidByName"]);
  expect(fieldsOf({ choice: insistChoice, text: "", saidByName: " Nora " })).toEqual({ saidByName: "Nora" });
  const answered = { ...asked, isAnswered: true };
  expect(fieldsOf({ choice: "", text: "", saidByName: "" }, answered)).toEqual([]);
});
