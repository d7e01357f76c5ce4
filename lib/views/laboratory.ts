import { loadLaboratory } from "@/lib/data/laboratory/laboratory-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

export const laboratoryView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => found(await loadLaboratory(tx)));
