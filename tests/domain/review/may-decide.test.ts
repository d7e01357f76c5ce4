import { expect, it } from "vitest";
import { decideSecondLook, decideSignOffStanding } from "@/lib/domain/review/may-decide";

const given = {
  signatoryId: "s",
  performerIds: ["p", "q"],
  performerMaySignOff: false,
  exceptionReason: "",
};

it("lets anybody independent sign, and nobody who had a hand in it", () => {
  expect(decideSignOffStanding(given)).toEqual({ ok: true, value: { kind: "independent" } });
  for (const signatoryId of ["p", "q"])
    expect(
      decideSignOffStanding({ ...given, signatoryId, exceptionReason: "nobody else is here" }),
    ).toMatchObject({ ok: false, refusal: { code: "rule" } });
});

it("asks for a reason where the policy allows it", () => {
  const policy = { ...given, signatoryId: "p", performerMaySignOff: true };
  expect(decideSignOffStanding({ ...policy, exceptionReason: "  short   " })).toMatchObject({ ok: false });
  expect(decideSignOffStanding({ ...policy, exceptionReason: "nobody else is here" })).toEqual({
    ok: true,
    value: { kind: "exception", reason: "nobody else is here" },
  });
});

it("gives the second look to somebody else, once, and only where it is owed", () => {
  const look = { personId: "x", signedById: "s", performerIds: ["p"], isOwed: true, isDone: false };
  expect(decideSecondLook(look).ok).toBe(true);
  expect(decideSecondLook({ ...look, personId: "s" }).ok).toBe(false);
  expect(decideSecondLook({ ...look, personId: "p" }).ok).toBe(false);
  expect(decideSecondLook({ ...look, isDone: true }).ok).toBe(false);
  expect(decideSecondLook({ ...look, isOwed: false }).ok).toBe(false);
});
