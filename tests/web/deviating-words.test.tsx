import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it, vi } from "vitest";
import { HoldItem } from "@/app/(lab)/holds/hold-item";
import { TakenIn } from "@/app/(lab)/orders/[number]/receive/taken-in";
import { IntakeFacts } from "@/app/(lab)/sensors/[tag]/intake-facts";

vi.mock("next/cache", () => ({ refresh: () => {}, revalidatePath: () => {} }));

const hold: Parameters<typeof HoldItem>[0]["hold"] = {
  id: "h",
  tag: "T-000011",
  isOnShelf: true,
  isInReview: false,
  orderNumber: "O-1",
  customer: "North",
  kind: "condition",
  reason: "sheath bent near the tip",
  nonconformity: null,
  placedBy: "Wren Abelard",
  placedAt: "2026-11-25T09:00:00Z",
  questions: [],
  isWaiting: false,
  isInsisted: false,
  release: {
    outcome: "go-on-with-disclaimer",
    reason: "as answered",
    disclaimer: "bent",
    awaitsAnother: false,
    releasedBy: "Wren Abelard",
    releasedAt: "2026-11-26T09:00:00Z",
  },
};
const paragraphs = (html: string) =>
  html
    .split("</p>")
    .map((one) => one.replaceAll(/<[^>]+>/g, ""))
    .filter((one) => one !== "");

describe("a hold that ended", () => {
  it("begins with its sensor, says that it ended, and keeps its reason apart from who wrote it", () => {
    const page = renderToStaticMarkup(<HoldItem hold={hold} mayPlace={false} mayRelease={false} />);
    expect(paragraphs(page).slice(0, 3)).toEqual([
      "T-000011: condition not as described. Ended: goes on, with a disclaimer",
      "sheath bent near the tip",
      expect.stringMatching(/^Put on hold by Wren Abelard, 2026-11-25/),
    ]);
  });
});

describe("what came in other than described", () => {
  it("is on hold until somebody asks the customer, and leads to where that is done", () => {
    const page = renderToStaticMarkup(<TakenIn number="O-1" taken="3" deviating="1" />);
    expect(page).toContain("3 sensors are taken in; 1 not as described or outside the limits");
    expect(page).toContain('<a href="/orders/O-1#holds">ask the customer from the order</a>');
    expect(page).not.toContain("has answered");
    expect(renderToStaticMarkup(<TakenIn number="O-1" taken="3" />)).not.toContain("not as described");
  });

  it("is a caution on the sensor's page until the customer was told, and information afterwards", () => {
    const intake: Parameters<typeof IntakeFacts>[0]["intake"] = {
      receivedOn: "2026-11-25",
      takenInBy: "Wren Abelard",
      takenInAt: "2026-11-25T09:00:00Z",
      condition: "Deviates",
      conditionNote: "bent",
      loopResistanceOhm: null,
      insulationMegaohm: null,
      polarity: "Not checked",
      typeCheck: "Not checked",
      grounding: "Not checked",
      findings: ["condition deviates (bent)"],
      checks: [],
    };
    const page = (isTold: boolean) => renderToStaticMarkup(<IntakeFacts intake={intake} isTold={isTold} />);
    expect(page(false)).toContain("Caution: tell the customer before it is loaded");
    expect(page(true)).toContain('data-kind="info"');
    expect(page(true)).toContain("Found on arrival; the customer was told");
    expect(page(true)).not.toContain("Caution");
  });
});
