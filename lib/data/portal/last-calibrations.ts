import type { LastCalibration } from "@/lib/domain/recall/sensors-due";
import type { Tx } from "../in-scope";
import { lastCertificateRows } from "../sql/last-certificates";

export const loadLastCalibrations = async (tx: Tx, customerId: string): Promise<readonly LastCalibration[]> =>
  (await lastCertificateRows(tx, customerId)).map((row) => ({
    serial: row.serial,
    typeLetter: row.type_letter,
    tag: row.tag,
    certificate: row.number,
    performedOn: row.performed_to,
    orderNumber: row.order_number,
    isHere: row.is_here,
    stands: row.stands,
  }));
