import { base32 } from "@/lib/domain/account/key-uri";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerRoles } from "@/lib/domain/staff/roles";
import type { staffRoles } from "@/lib/domain/staff/schema";
import { recordCustomer } from "@/lib/operations/customer/record";
import { foundLaboratory } from "@/lib/operations/laboratory/found";
import { newSecret } from "@/lib/operations/one-time-code";
import { addPerson } from "@/lib/operations/staff/add-person";
import { tellAuthorisations } from "./signing";
import type { Teller } from "./teller";

/** Published with the demonstration, which is why it may be reached from this machine only. */
export const demoPassword = "warm each tip first";

const system: Actor = { kind: "system", name: "demonstration" };

export type Cast = {
  readonly manager: Actor;
  readonly desk: Actor;
  readonly technician: Actor;
  readonly signatory: Extract<Actor, { kind: "staff" }>;
  /** Of the signatory's one-time codes. */
  readonly codeSecret: Uint8Array;
  readonly customers: { readonly brandt: string; readonly oakes: string };
  /** Their people, who ask for work in the portal. */
  readonly buyers: { readonly brandt: Actor; readonly oakes: Actor };
  readonly signIns: readonly SignIn[];
};

/** How the demonstration lets somebody in. */
export type SignIn = {
  readonly role: string;
  readonly email: string;
  readonly password: string;
  /** For an authenticator, base32: whoever signs certificates gives one-time codes. Published like the passwords. */
  readonly codeKey?: string;
};

/** The laboratory, its people and its two customers: all of them invented. */
export const tellPeople = async (teller: Teller): Promise<Cast> => {
  const { tell, at } = teller;
  const founded = at(400);
  const accreditation =
    "Demonstration, not accredited: this laboratory is invented, no body has assessed it. Its scope is invented data, so that the marking of results shows.";
  await tell(foundLaboratory, system, founded, {
    name: "Harrow Vale Calibration",
    addressLines: "4 Kiln Lane\nHarrow Vale HV3 9TQ",
    contact: "desk@harrowvale.example",
    accreditationText: accreditation,
    accreditationNumber: "DEMONSTRATION, not a number of any body",
    countryCode: "GB",
    performerMaySignOff: false,
    isDemo: true,
  });

  const signIns: SignIn[] = [];
  const codeSecret = newSecret();
  const staff = async (name: string, email: string, roles: (typeof staffRoles)[number][]) => {
    const input = { name, email, roles, customerId: null, password: demoPassword };
    const { id } = await tell(addPerson, system, founded, input);
    const codes = roles.includes("signatory") ? { codeKey: base32(codeSecret) } : {};
    signIns.push({ role: roles.join(", "), email, password: demoPassword, ...codes });
    return { kind: "staff", personId: id, name, roles } as const;
  };
  const desk = await staff("Wren Abelard", "wren@harrowvale.example", ["front-desk"]);
  const technician = await staff("Tamsin Okoro", "tamsin@harrowvale.example", ["technician"]);
  const signatory = await staff("Odile Marchetti", "odile@harrowvale.example", ["signatory"]);
  const manager = await staff("Idris Vaughan", "idris@harrowvale.example", ["quality-manager"]);
  await tellAuthorisations(teller, manager, signatory);

  const customer = async (name: string, addressLines: string, contactName: string, email: string) => {
    const { id } = await tell(recordCustomer, desk, at(60), { name, addressLines, contactName, email });
    const input = { name: contactName, email, roles: [], customerId: id, password: demoPassword };
    const person = await tell(addPerson, manager, at(60), input);
    signIns.push({ role: `customer, ${name}`, email, password: demoPassword });
    const roles = [...customerRoles];
    const buyer: Actor = { kind: "customer", personId: person.id, name: contactName, roles, customerId: id };
    return { id, buyer };
  };
  const brandt = await customer(
    "Brandt Höfle Heat Treatment",
    "Unit 12, Foundry Road\nEastmoor EM1 4XX",
    "Ines Höfle",
    "ines@brandt-hoefle.example",
  );
  const oakes = await customer(
    "Oakes & Bellamy Glass",
    "The Lehr House, Mill Street\nSandbeck SB7 2RD",
    "Teodor Lisowski",
    "teodor@oakes-bellamy.example",
  );
  const customers = { brandt: brandt.id, oakes: oakes.id };
  const buyers = { brandt: brandt.buyer, oakes: oakes.buyer };
  return { manager, desk, technician, signatory, codeSecret, customers, buyers, signIns };
};
