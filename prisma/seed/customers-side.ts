import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerRoles } from "@/lib/domain/staff/roles";
import { addAddress } from "@/lib/operations/portal/add-address";
import { changeColleagueRoles } from "@/lib/operations/portal/change-colleague-roles";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { addPerson } from "@/lib/operations/staff/add-person";
import { type Cast, demoPassword } from "./people";
import type { Teller } from "./teller";

/** Whoever of a customer was there first, as they act in the portal. */
const firstOf = (customerId: string): Promise<Actor> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const { id, name } = await tx.person.findFirstOrThrow({
      where: { customerId },
      orderBy: { createdAt: "asc" },
    });
    return { kind: "customer", personId: id, name, roles: customerRoles, customerId };
  });

const certifiedSerial = (customerId: string): Promise<string> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const { sensorId } = await tx.certificate.findFirstOrThrow({
      where: { customerId },
      orderBy: { number: "asc" },
    });
    return (await tx.sensor.findUniqueOrThrow({ where: { id: sensorId } })).serial;
  });

/** What the customers set up for themselves: where parcels go, a colleague who reads, and how often they calibrate. */
export const tellCustomersSide = async (
  { tell, at }: Teller,
  { manager, customers }: Cast,
): Promise<void> => {
  const ines = await firstOf(customers.brandt);
  await tell(addAddress, ines, at(40), {
    kind: "delivery",
    title: "Works 2, goods in",
    addressLines: "Gate 3, Slag Lane\nEastmoor EM2 7TT",
    contactName: "Goods in",
  });
  await tell(addAddress, ines, at(40), {
    kind: "invoice",
    title: "Accounts",
    addressLines: "PO Box 118\nEastmoor EM1 4XX",
    contactName: "",
  });
  const colleague = await tell(addPerson, manager, at(40), {
    name: "Jorun Feld",
    email: "jorun@brandt-hoefle.example",
    roles: [],
    customerId: customers.brandt,
    password: demoPassword,
  });
  await tell(changeColleagueRoles, ines, at(39), { id: colleague.id, version: 1, roles: [] });
  await tell(setRecallInterval, ines, at(1), { months: "12", noticeDays: "30" });
  // One that ages fast: due soon on the first day of the demonstration.
  const serial = await certifiedSerial(customers.brandt);
  await tell(setRecallInterval, ines, at(1), { serial, months: "1", noticeDays: "60" });
  await tell(setRecallInterval, await firstOf(customers.oakes), at(1), { months: "24", noticeDays: "60" });
};
