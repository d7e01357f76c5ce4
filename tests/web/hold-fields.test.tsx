import type { ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { FormStateProvider } from "@/app/_ui/form-context.client";
import { QuestionFields } from "@/app/(lab)/holds/question-fields";
import { atShownFields } from "@/app/(lab)/holds/shown-fields";
import { WhyAndQuestion } from "@/app/(lab)/holds/why-and-question.client";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { askAboutHold } from "@/lib/operations/question/ask";
import type { FormState } from "@/lib/web/form-state";

const desk: Actor = { kind: "system", name: "a test" };
const publicUrl = "https://laboratory.example";
const now = () => new Date("2026-03-03T09:00:00Z");
const values = { choices: "One\nOne\nTwo" };

const refusedBy = async (act: Promise<unknown>): Promise<FormState> => {
  const error = await act.catch((thrown: unknown) => thrown);
  if (!(error instanceof Refused)) throw new Error("it was not refused");
  const { message, fields } = error.refusal;
  return atShownFields({ status: "refused", message, fields: { ...fields }, values });
};
const place = (choices: string[]) => {
  const said = { orderNumber: "O-1", tag: "", kind: "condition" as const, reason: "bent" };
  const question = { text: "How shall we go on?", choices };
  return refusedBy(execute(placeHoldOn, desk, { ...said, question, publicUrl }, now));
};
const ask = (choices: string[]) => {
  const asked = { holdId: "00000000-0000-4000-8000-000000000001", text: "How shall we go on?" };
  return refusedBy(execute(askAboutHold, desk, { ...asked, choices, publicUrl }, now));
};
const html = (state: FormState, form: ReactElement) =>
  renderToStaticMarkup(<FormStateProvider value={state}>{form}</FormStateProvider>);
const words = (text: string) => text.replaceAll(/<[^>]+>/g, " ").replaceAll("&#x27;", "'");

describe("what is wrong with the answers offered", () => {
  const long = "x".repeat(121);
  it.each([
    [["One", "One", "Two"], "Two answers are the same."],
    [["One", long], "Answer 2: At most 120 characters."],
    [[long], "Answer 1: At most 120 characters."],
    [["1", "2", "3", "4", "5", "6", "7"], "At most six answers."],
  ])("stands at their field, in both forms", async (choices, message) => {
    for (const page of [
      html(await place(choices), <WhyAndQuestion>{null}</WhyAndQuestion>),
      html(await ask(choices), <QuestionFields prefix="" />),
    ]) {
      expect(/<textarea[^>]*name="choices"[^>]*>/.exec(page)?.[0]).toContain('aria-invalid="true"');
      expect(words(page)).toContain(message);
    }
  });

  it("leaves what is no refusal, and other fields, as they are", () => {
    const done = { status: "done", message: "On hold." } as const;
    expect(atShownFields(done)).toBe(done);
    const state = { status: "refused", message: "", fields: { "question.text": "a", kind: "b" }, values: {} };
    expect(atShownFields(state as FormState)).toEqual(state);
  });
});

describe("an empty question", () => {
  const whole = (kind: string) =>
    words(
      html(
        { status: "refused", message: "", fields: {}, values: { kind } },
        <WhyAndQuestion>{null}</WhyAndQuestion>,
      ),
    ).replaceAll(/\s+/g, " ");

  it("may stay empty where nobody has to be asked, and the form says so", () => {
    expect(whole("condition")).toContain("Question to the customer (may stay empty)");
    expect(whole("condition")).toContain("Left empty, nobody is asked.");
  });

  it("may not where the hold waits for its answer, or where it is all the form is for", () => {
    const asking = words(html({ status: "idle" }, <QuestionFields prefix="" />)).replaceAll(/\s+/g, " ");
    for (const page of [whole("question"), asking]) {
      expect(page).not.toContain("Question to the customer (may stay empty)");
      expect(page).not.toContain("nobody is asked");
    }
  });
});
