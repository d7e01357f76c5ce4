import { certificateSum } from "@/lib/data/sql/certificate-sum";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer } from "../view";

/** How many certificates the customer has, and how large they are together: what a ZIP of all of them would be. */
export const portalCertificateSumView = (actor: Actor) =>
  answer(actor, "portal.read", (tx) => certificateSum(tx, customerIdOf(actor)));
