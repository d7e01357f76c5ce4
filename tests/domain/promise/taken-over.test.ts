import { expect, it } from "vitest";
import { takenOver } from "@/lib/domain/promise/taken-over";

const slot = (orderId: string | null, startsAt: number, endsAt: number, furnaceId = "f1") => ({
  ...{ orderId, order: orderId && `O-${orderId}`, furnaceId, startsAt, endsAt },
});
const work = (number: string, startsAt: number, endsAt: number, orders: readonly string[] = []) => ({
  work: { number, orders },
  hours: { furnaceId: "f1", startsAt, endsAt },
});

it("names what lies in the hours kept for an order, each once, in its furnace alone", () => {
  const works = [work("R-1", 0, 10), work("CH-1", 9, 12), work("R-2", 20, 30)];
  const kept = [
    slot("a", 5, 10),
    slot("a", 8, 11),
    slot("b", 12, 20),
    slot("c", 0, 50, "f2"),
    slot(null, 0, 9),
  ];
  expect([...takenOver(kept, works)]).toEqual([["a", ["R-1", "CH-1"]]]);
});

it("takes nothing from an order whose own sensors are in the run", () => {
  expect(takenOver([slot("a", 0, 10)], [work("R-1", 0, 10, ["O-a", "O-b"])]).size).toBe(0);
});
