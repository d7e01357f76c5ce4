import type { Tx } from "@/lib/data/in-scope";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { countedReports } from "@/lib/data/provider/report-store";
import { addressBlock } from "@/lib/domain/customer/address-block";

type NewShipment = {
  readonly number: string;
  readonly order: { readonly id: string; readonly customerId: string };
  readonly handedOver: "carrier" | "in-person";
  readonly carrier: string;
  readonly reference: string;
  readonly address: string;
  readonly packedById: string;
  readonly packedAt: Date;
  readonly sensorIds: readonly string[];
};

/** A parcel with what is in it: a sensor leaves once. */
export const insertShipment = async (
  tx: Tx,
  { order, sensorIds, ...parcel }: NewShipment,
): Promise<string> => {
  const { id: orderId, customerId } = order;
  const { id } = await tx.shipment.create({ data: { ...parcel, orderId, customerId }, select: { id: true } });
  await tx.shipmentSensor.createMany({
    data: sensorIds.map((sensorId) => ({ shipmentId: id, sensorId, customerId })),
  });
  return id;
};

/** The customer's own address, or one of their delivery addresses; null = not theirs, or given up. */
export const loadShippingAddress = async (
  tx: Tx,
  customerId: string,
  addressId: string | null,
): Promise<string | null> => {
  if (addressId === null)
    return (
      await tx.customer.findUniqueOrThrow({ where: { id: customerId }, select: { addressLines: true } })
    ).addressLines;
  const row = await tx.customerAddress.findFirst({ where: { id: addressId, customerId, active: true } });
  return row && addressBlock(row);
};

/** Where parcels may go beside the customer's own address: for deliveries, and where the order itself says. */
export const listDeliveryAddresses = (tx: Tx, customerId: string, chosenId: string | null) =>
  tx.customerAddress.findMany({
    where: { customerId, active: true, OR: [{ kind: "delivery" }, ...(chosenId ? [{ id: chosenId }] : [])] },
    orderBy: [{ title: "asc" }, { id: "asc" }],
    select: { id: true, title: true, addressLines: true },
  });

/** Numbers of the certificates of each sensor; a provider's own with its name. */
export const loadCertificateNumbers = async (
  tx: Tx,
  sensorIds: readonly string[],
): Promise<ReadonlyMap<string, readonly string[]>> => {
  const rows = await certificatesOfSensors(tx, sensorIds);
  const found = new Map<string, string[]>();
  for (const { sensorId, number } of rows) found.set(sensorId, [...(found.get(sensorId) ?? []), number]);
  for (const [sensorId, { certificate, providerName }] of await countedReports(tx, sensorIds))
    found.set(sensorId, [...(found.get(sensorId) ?? []), `${certificate} by ${providerName}`]);
  return found;
};
