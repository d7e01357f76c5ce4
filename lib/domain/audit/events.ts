import { accountEvents } from "../account/events";
import { addressEvents } from "../address/events";
import { agreementEvents } from "../agreement/events";
import { authorisationEvents } from "../authorisation/events";
import { calibrationEvents } from "../calibration/events";
import { certificateEvents } from "../certificate/events";
import { evidenceFileEvents } from "../certificate/evidence-file/events";
import { custodyEvents } from "../custody/events";
import { customerEvents } from "../customer/events";
import { equipmentEvents } from "../equipment/events";
import { furnaceEvents } from "../furnace/events";
import { gateEvents } from "../gate/events";
import { holdEvents } from "../hold/events";
import { invoicingEvents } from "../invoicing/events";
import { machineEvents } from "../machine/events";
import { mailEvents } from "../mail/events";
import { nonconformityEvents } from "../nonconformity/events";
import { opinionEvents } from "../opinion/events";
import { orderEvents } from "../order/events";
import { partsEvents } from "../parts/events";
import { priceEvents } from "../price/events";
import { procedureEvents } from "../procedure/events";
import { promiseEvents } from "../promise/events";
import { providerEvents } from "../provider/events";
import { questionEvents } from "../question/events";
import { quotationEvents } from "../quotation/events";
import { recallEvents } from "../recall/events";
import { reminderEvents } from "../reminder/events";
import { reviewEvents } from "../review/events";
import { runEvents } from "../run/events";
import { scopeEvents } from "../scope/events";
import { sealEvents } from "../seal/events";
import { sensorEvents } from "../sensor/events";
import { shipmentEvents } from "../shipment/events";
import { signingEvents } from "../signing/events";
import { staffEvents } from "../staff/events";
import { traceEvents } from "../trace/events";
import type { EventDefinition } from "./define-event";

/** The catalogue: every fact the audit log can hold. A stored action that is not here is a defect `rederive` names. */
export const auditEvents = [
  ...Object.values(staffEvents),
  ...Object.values(accountEvents),
  ...Object.values(customerEvents),
  ...Object.values(orderEvents),
  ...Object.values(sensorEvents),
  ...Object.values(equipmentEvents),
  ...Object.values(providerEvents),
  ...Object.values(calibrationEvents),
  ...Object.values(furnaceEvents),
  ...Object.values(runEvents),
  ...Object.values(gateEvents),
  ...Object.values(reviewEvents),
  ...Object.values(partsEvents),
  ...Object.values(certificateEvents),
  ...Object.values(evidenceFileEvents),
  ...Object.values(scopeEvents),
  ...Object.values(sealEvents),
  ...Object.values(procedureEvents),
  ...Object.values(traceEvents),
  ...Object.values(machineEvents),
  ...Object.values(mailEvents),
  ...Object.values(reminderEvents),
  ...Object.values(priceEvents),
  ...Object.values(quotationEvents),
  ...Object.values(agreementEvents),
  ...Object.values(promiseEvents),
  ...Object.values(shipmentEvents),
  ...Object.values(invoicingEvents),
  ...Object.values(holdEvents),
  ...Object.values(questionEvents),
  ...Object.values(nonconformityEvents),
  ...Object.values(custodyEvents),
  ...Object.values(addressEvents),
  ...Object.values(recallEvents),
  ...Object.values(signingEvents),
  ...Object.values(authorisationEvents),
  ...Object.values(opinionEvents),
] as unknown as readonly EventDefinition<string, never>[];

export const eventDefinition = (action: string): EventDefinition<string, never> | undefined =>
  auditEvents.find((definition) => definition.action === action);
