import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { linkHash } from "@/lib/data/question/ask-question";
import { conditionChoices, insistChoice } from "@/lib/domain/question/labels";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { releaseHold } from "@/lib/operations/hold/release";
import { answerAtDesk } from "@/lib/operations/question/answer-at-desk";
import { answerByLink } from "@/lib/operations/question/answer-by-link";
import { answerInPortal } from "@/lib/operations/question/answer-in-portal";
import { askAboutHold } from "@/lib/operations/question/ask";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, intakeInput, orderInput, received } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const publicUrl = "https://laboratory.example";
const inLaboratory = <T>(work: (tx: Tx) => Promise<T>) => inScope({ kind: "laboratory" }, work);
const link = { kind: "system", name: "link" } as const;
const later = (days: number) => () => new Date(clock().getTime() + days * 86_400_000);
const question = { text: "The tip is bent. How shall we go on?", choices: [...conditionChoices] };

/** One sensor of an order of its own, on hold with a question. */
const held = async () => {
  const orderNumber = await accepted(desk, orderInput(desk.northern.customerId));
  const [tag] = await received(desk, orderNumber, "A1");
  const input = {
    orderNumber,
    tag: tag!,
    kind: "condition" as const,
    reason: "tip bent",
    question,
    publicUrl,
  };
  const placed = await execute(placeHoldOn, desk.frontDesk, input, clock);
  const sensor = await inLaboratory((tx) => tx.sensor.findUniqueOrThrow({ where: { tag: tag! } }));
  return { orderNumber, tag: tag!, sensorId: sensor.id, ...placed };
};
const end = (
  holdId: string,
  outcome: "go-on" | "go-on-with-disclaimer" | "return-unmeasured",
  disclaimer = "",
) => execute(releaseHold, desk.frontDesk, { holdId, outcome, reason: "as answered", disclaimer }, clock);
const standing = (sensorId: string) => inLaboratory((tx) => holdsOf(tx, [sensorId]));

describe("a hold with its question", () => {
  it("is stored, mailed to the customer without anything confidential, and told to the log", async () => {
    const { orderNumber, tag, sensorId, token } = await held();
    expect(await standing(sensorId)).toMatchObject([{ tag, reason: "tip bent", isToBeReturned: false }]);
    const mail = await inLaboratory((tx) =>
      tx.mailMessage.findFirstOrThrow({ where: { kind: "question" }, orderBy: { enqueuedAt: "desc" } }),
    );
    expect(mail.body).toContain(`${publicUrl}/answer/`);
    expect(mail.body).toContain(orderNumber);
    for (const secret of [tag, "A1", "bent"]) expect(mail.body + mail.subject).not.toContain(secret);
    const stored = await inLaboratory((tx) => tx.customerLink.findMany());
    expect(stored.map(({ tokenHash }) => tokenHash)).toContain(linkHash(token!));
    expect(JSON.stringify(stored)).not.toContain(token);
    const sentences = await auditSentences();
    expect(sentences).toContain(
      `hold.placed: put sensor ${tag} of order ${orderNumber} on hold (condition not as described): tip bent`,
    );
    expect(sentences.at(-1)).toContain("question.asked: asked the customer about sensor");
  });

  it("is answered once by the link, with who and when, and no longer after its days", async () => {
    const { token, questionId } = await held();
    const said = { token: token!, saidByName: "Nora North", choice: insistChoice };
    for (const [input, at, code] of [
      [{ ...said, token: "made-up" }, clock, "not-found"],
      [said, later(31), "not-found"],
      [{ ...said, choice: "Scrap it" }, clock, "invalid"],
      [{ ...said, choice: "", text: "well" }, clock, "invalid"],
      [{ ...said, saidByName: " " }, clock, "invalid"],
    ] as const)
      expect((await refusalOf(execute(answerByLink, link, input, at))).code).toBe(code);
    await execute(answerByLink, link, { ...said, text: "It was always so." }, later(2));
    const answer = await inLaboratory((tx) => tx.answer.findUnique({ where: { questionId: questionId! } }));
    expect(answer).toMatchObject({
      insists: true,
      cameBy: "link",
      saidByName: "Nora North",
      saidAt: later(2)(),
    });
    expect((await refusalOf(execute(answerByLink, link, said, later(3)))).code).toBe("wrong-state");
  });

  it("is answered in the portal by its own customer alone", async () => {
    const { questionId } = await held();
    const said = { questionId: questionId!, choice: conditionChoices[2] };
    expect((await refusalOf(execute(answerInPortal, desk.southern.actor, said, clock))).code).toBe(
      "not-found",
    );
    const reader = { ...desk.northern.actor, roles: ["customer"] } as typeof desk.northern.actor;
    expect((await refusalOf(execute(answerInPortal, reader, said, clock))).code).toBe("not-permitted");
    await execute(answerInPortal, desk.northern.actor, said, clock);
    expect(
      await inLaboratory((tx) => tx.answer.findUnique({ where: { questionId: questionId! } })),
    ).toMatchObject({
      cameBy: "portal",
      saidByName: "Nora North",
      insists: false,
    });
  });

  it("ends only after the answer, and says on the certificate that the customer insisted", async () => {
    const { holdId, questionId, sensorId } = await held();
    expect((await refusalOf(end(holdId, "go-on"))).code).toBe("rule");
    const said = { questionId: questionId!, saidByName: "Nora North", choice: insistChoice };
    await execute(answerAtDesk, desk.frontDesk, said, clock);
    expect((await refusalOf(end(holdId, "go-on"))).fields).toHaveProperty("outcome");
    expect((await refusalOf(end(holdId, "go-on-with-disclaimer"))).fields).toHaveProperty("disclaimer");
    expect((await refusalOf(end(holdId, "return-unmeasured", "words"))).fields).toHaveProperty("disclaimer");
    await end(holdId, "go-on-with-disclaimer", "The tip was bent.");
    expect(await standing(sensorId)).toEqual([]);
    expect((await refusalOf(end(holdId, "go-on-with-disclaimer", "Again."))).code).toBe("wrong-state");
  });

  it("keeps standing when the sensor goes back unmeasured", async () => {
    const { holdId, questionId, sensorId } = await held();
    const said = { questionId: questionId!, saidByName: "Nora North", choice: conditionChoices[1] };
    await execute(answerAtDesk, desk.frontDesk, said, clock);
    await end(holdId, "return-unmeasured");
    expect(await standing(sensorId)).toMatchObject([{ isToBeReturned: true }]);
  });
});

describe("placing a hold", () => {
  it("comes with the intake where the condition deviates, and can be asked about afterwards", async () => {
    const orderNumber = await accepted(desk, orderInput(desk.northern.customerId));
    const input = {
      ...intakeInput(orderNumber, "B1"),
      condition: "deviates" as const,
      conditionNote: "sheath dented",
    };
    await execute(receiveSensors, desk.frontDesk, input, clock);
    const hold = await inLaboratory((tx) => tx.hold.findFirstOrThrow({ where: { reason: "sheath dented" } }));
    const ask = { holdId: hold.id, ...question, publicUrl };
    await execute(askAboutHold, desk.technician, ask, clock);
    expect((await refusalOf(execute(askAboutHold, desk.technician, ask, clock))).code).toBe("wrong-state");
  });

  it("stands on a whole order too", async () => {
    const orderNumber = await accepted(desk, orderInput(desk.northern.customerId));
    const tags = await received(desk, orderNumber, "C1\nC2");
    const input = { orderNumber, kind: "condition" as const, reason: "two labels alike", publicUrl };
    await execute(placeHoldOn, desk.technician, input, clock);
    const sensors = await inLaboratory((tx) => tx.sensor.findMany({ where: { tag: { in: [...tags] } } }));
    const holds = await inLaboratory((tx) =>
      holdsOf(
        tx,
        sensors.map(({ id }) => id),
      ),
    );
    expect(holds.map(({ tag, isOfOrder }) => [tag, isOfOrder])).toEqual(tags.map((tag) => [tag, true]));
  });

  it("is refused for another order's sensor, without a reason, without its question, and for customers", async () => {
    const { tag } = await held();
    const orderNumber = await accepted(desk, orderInput(desk.northern.customerId));
    const input = { orderNumber, kind: "condition" as const, reason: "r", publicUrl };
    const place = (more: object, actor = desk.frontDesk) =>
      refusalOf(execute(placeHoldOn, actor, { ...input, ...more }, clock));
    expect((await place({ tag })).code).toBe("not-found");
    expect((await place({ reason: " " })).fields).toHaveProperty("reason");
    expect((await place({ kind: "question" })).fields).toHaveProperty(["question.text"]);
    expect((await place({}, desk.northern.actor)).code).toBe("not-permitted");
  });
});
