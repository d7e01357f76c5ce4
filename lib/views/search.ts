import { searchEverywhere } from "@/lib/data/sql/search-everywhere";
import { groupHits, hitAddress, hitKindLabels, listAddress } from "@/lib/domain/search/group-hits";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** Anything in the laboratory by what stands on it: exact hits first, grouped by what it is. For staff alone. */
export const searchView = (actor: Actor, text: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const found = text === "" ? [] : await searchEverywhere(tx, text);
    return groupHits(found).map(({ kind, hits, more }) => ({
      kind,
      title: hitKindLabels[kind],
      all: more ? listAddress(kind, text) : null,
      hits: hits.map((hit) => ({ ...hit, href: hitAddress(hit), isExact: hit.rank === 0 })),
    }));
  });
