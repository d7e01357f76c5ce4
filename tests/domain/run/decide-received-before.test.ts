import { expect, it } from "vitest";
import { decideReceivedBefore } from "@/lib/domain/run/decide-received-before";

const sensors = [
  { tag: "T-1", receivedOn: "2026-03-02" },
  { tag: "T-2", receivedOn: "2026-03-04" },
];
const begun = (at: string) => decideReceivedBefore(new Date(at), sensors);

it("lets a run begin on the day its last sensor came, wherever on Earth that day began", () => {
  expect(begun("2026-03-03T10:00:00Z").ok, "UTC+14: midnight").toBe(true);
  expect(begun("2026-03-05T00:00:00Z").ok).toBe(true);
  expect(decideReceivedBefore(new Date(0), []).ok).toBe(true);
});

it("refuses a run that would have begun before, and names whom and both times", () => {
  const refused = begun("2026-03-03T09:59:59Z");
  expect(refused).toMatchObject({ ok: false, refusal: { code: "rule" } });
  const message = refused.ok ? "" : refused.refusal.message;
  expect(message).toContain("2026-03-03T09:59:59.000Z");
  expect(message).toContain("T-2 on 2026-03-04");
  expect(message).not.toContain("T-1");
});
