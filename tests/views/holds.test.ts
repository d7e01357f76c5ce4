import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { conditionChoices } from "@/lib/domain/question/labels";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { complain } from "@/lib/operations/nonconformity/complain";
import { openNonconformity } from "@/lib/operations/nonconformity/open";
import { answerByLink } from "@/lib/operations/question/answer-by-link";
import { orderHoldsView, sensorHoldsView } from "@/lib/views/hold/holds-on";
import { openHoldsView } from "@/lib/views/hold/open-holds";
import { nonconformitiesView } from "@/lib/views/nonconformity/nonconformities";
import { nonconformityView } from "@/lib/views/nonconformity/nonconformity";
import { nonconformitiesOnView } from "@/lib/views/nonconformity/on-subject";
import { linkedQuestionView } from "@/lib/views/question/linked-question";
import { sensorView } from "@/lib/views/sensor/sensor";
import { codeOf } from "../support/code-of";
import { clock, type FrontDesk, openFrontDesk } from "../support/front-desk";
import { accepted, orderInput, received } from "../support/orders";

let desk: FrontDesk;
let order: string;
let tags: readonly string[];
let token: string;
const publicUrl = "https://laboratory.example";

beforeAll(async () => {
  desk = await openFrontDesk();
  order = await accepted(desk, orderInput(desk.northern.customerId));
  tags = await received(desk, order, "A1\nB2");
  const hold = { orderNumber: order, kind: "condition" as const, publicUrl };
  const question = { text: "How shall we go on?", choices: [...conditionChoices] };
  const asked = await execute(
    placeHoldOn,
    desk.frontDesk,
    { ...hold, tag: tags[0]!, reason: "bent", question },
    clock,
  );
  token = asked.token!;
  await execute(placeHoldOn, desk.frontDesk, { ...hold, reason: "labels unclear" }, clock);
});
afterAll(() => desk.close());

const openOf = async (filter: "all" | "waiting" | "answered" | "not-asked") =>
  (await openHoldsView(desk.technician, { filter, page: 1 })).holds.map(({ reason }) => reason);

describe("holds", () => {
  it("are shown on the sensor, with those of its order, and on the order, all of them", async () => {
    const reasons = async (tag: string) =>
      (await sensorHoldsView(desk.technician, tag)).holds.map(({ reason }) => reason);
    expect((await reasons(tags[0]!)).toSorted()).toEqual(["bent", "labels unclear"]);
    expect(await reasons(tags[1]!)).toEqual(["labels unclear"]);
    const of = await orderHoldsView(desk.technician, order);
    expect(of.holds).toHaveLength(2);
    expect([of.mayPlace, of.mayRelease]).toEqual([true, false]);
    expect((await orderHoldsView(desk.frontDesk, order)).mayRelease).toBe(true);
  });

  it("are what the sensor waits for next, instead of the furnace", async () => {
    const next = async (tag: string) => (await sensorView(desk.technician, tag)).next;
    expect(await next(tags[0]!)).toContain("the customer answers");
    expect(await next(tags[1]!), "nobody was asked").toContain("ends the hold");
  });

  it("are listed by what they wait for, and not for customers", async () => {
    expect(await openOf("waiting")).toEqual(["bent"]);
    expect(await openOf("not-asked")).toEqual(["labels unclear"]);
    expect(await openOf("answered")).toEqual([]);
    expect(await openOf("all")).toHaveLength(2);
    const asked = { filter: "all", page: 1 } as const;
    expect(await codeOf(openHoldsView(desk.northern.actor, asked))).toBe("not-permitted");
  });
});

describe("a question", () => {
  it("is open by its link, until it is answered", async () => {
    expect(await linkedQuestionView("made-up", clock())).toBeNull();
    expect(await linkedQuestionView(token, clock())).toMatchObject({ isOpen: true, serial: "A1" });
    const said = { token, saidByName: "Nora North", choice: conditionChoices[1] };
    await execute(answerByLink, { kind: "system", name: "link" }, said, clock);
    expect(await linkedQuestionView(token, clock())).toMatchObject({ isOpen: false });
    expect(await openOf("answered")).toEqual(["bent"]);
  });
});

describe("nonconforming work", () => {
  it("is listed by state and kind, shown on its subject, and says what this person may do", async () => {
    const found = { subjectKind: "sensor" as const, subjectName: tags[1]!, title: "t", description: "d" };
    const { number } = await execute(
      openNonconformity,
      desk.technician,
      { ...found, kind: "nonconforming-work" },
      clock,
    );
    const complaint = { subjectKind: "order" as const, subjectName: order, title: "late", description: "d" };
    const own = await execute(complain, desk.northern.actor, { ...complaint, publicUrl }, clock);
    const numbers = async (state: "open" | "closed", kind: "complaint" | "all") =>
      (await nonconformitiesView(desk.technician, { state, kind, page: 1 })).rows.map((row) => row.number);
    expect((await numbers("open", "all")).toSorted()).toEqual([number, own.number].toSorted());
    expect(await numbers("open", "complaint")).toEqual([own.number]);
    expect(await numbers("closed", "all")).toEqual([]);
    const on = await nonconformitiesOnView(desk.technician, "sensor", tags[1]!);
    expect(on.rows.map((row) => row.number)).toEqual([number]);
    const page = await nonconformityView(desk.technician, number);
    expect(page).toMatchObject({ toHold: [tags[1]], mayDecide: false, mayClose: false, mayOpen: true });
    expect(await nonconformityView(desk.signatory, number)).toMatchObject({
      mayDecide: true,
      mayClose: true,
    });
    expect(await codeOf(nonconformityView(desk.signatory, "N-none"))).toBe("not-found");
  });
});
