import { expect, it } from "vitest";
import { groupHits, type Hit, hitAddress, hitKinds, listAddress } from "@/lib/domain/search/group-hits";

const hit = (more: Partial<Hit>): Hit => ({
  kind: "sensor",
  key: "T-000001",
  label: "A1, T-000001",
  detail: "type K",
  state: "received",
  rank: 1,
  ...more,
});

it("puts the kind with an exact hit first, and in a kind the exact hit", () => {
  const groups = groupHits([
    hit({ key: "T-000009", label: "A12, T-000009", rank: 1 }),
    hit({ kind: "order", key: "O-1", label: "O-1", rank: 1 }),
    hit({ kind: "customer", key: "c", label: "A1", rank: 0 }),
    hit({ key: "T-000002", label: "XA1, T-000002", rank: 2 }),
  ]);
  expect(groups.map(({ kind }) => kind)).toEqual(["customer", "sensor", "order"]);
  expect(groups[1]?.hits.map(({ key }) => key)).toEqual(["T-000009", "T-000002"]);
});

it("shows a thing once, by its best way of being found", () => {
  const [group] = groupHits([hit({ rank: 2 }), hit({ rank: 0 }), hit({ rank: 1 })]);
  expect(group?.hits).toEqual([hit({ rank: 0 })]);
});

it("says when there are more than it shows", () => {
  const many = (count: number) =>
    Array.from({ length: count }, (_, index) => hit({ key: `T-${index}`, label: `L${index}` }));
  expect(groupHits(many(8))[0]?.more).toBe(false);
  expect(groupHits(many(9))[0]).toMatchObject({ more: true });
  expect(groupHits(many(9))[0]?.hits).toHaveLength(8);
});

it("leads each kind to its page, and to its list where that can be asked", () => {
  expect(hitKinds.map((kind) => hitAddress({ kind, key: "a b" }))).toEqual([
    "/sensors/a%20b",
    "/orders/a%20b",
    "/certificates/a%20b",
    "/customers/a%20b",
    "/runs/a%20b",
    "/standards/a%20b",
    "/quality/a%20b",
    "/orders/a%20b",
  ]);
  expect(hitAddress({ kind: "equipment", key: "f1 furnace" })).toBe("/furnaces/f1");
  expect(listAddress("order", "a&b")).toBe("/orders?show=all&q=a%26b");
  expect(listAddress("run", "a")).toBeNull();
});
