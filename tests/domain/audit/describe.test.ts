import { describe, expect, it } from "vitest";
import { describeEvent } from "@/lib/domain/audit/describe";
import { auditEvents } from "@/lib/domain/audit/events";

const nameOf = (id: string): string | undefined => (id === "p-1" ? "Ada" : undefined);

const unknown = { actorId: "p-1", action: "thing.unheard-of", entityKind: "thing", payload: "{}" };

describe("a stored event as a sentence", () => {
  it("says who, by the name of today", () => {
    expect(describeEvent(unknown, nameOf).who).toBe("Ada");
    expect(describeEvent({ ...unknown, actorId: "system:seed" }, nameOf).who).toBe("The platform (seed)");
    expect(describeEvent({ ...unknown, actorId: "p-2" }, nameOf).who).toBe("Somebody no longer on record");
  });

  it("admits what it cannot read: an action not in the catalogue, a payload that does not fit, no JSON", () => {
    expect(describeEvent(unknown, nameOf)).toMatchObject({ understood: false });
    for (const { action, entityKind } of auditEvents)
      for (const payload of ["", "{", "7", '{"never":"heard of"}'])
        expect([
          action,
          describeEvent({ ...unknown, action, entityKind, payload }, nameOf).understood,
        ]).toEqual([action, false]);
  });
});

describe("the catalogue", () => {
  it("has each action once, named after its kind, in the past", () => {
    const actions = auditEvents.map((event) => event.action);
    expect(new Set(actions).size).toBe(actions.length);
    for (const { action } of auditEvents) expect(action).toMatch(/^[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*$/);
  });
});
