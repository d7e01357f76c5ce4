import type { ChainNode } from "@/lib/domain/trace/chain";

/**
 * Where a node's own record stands. What is only named on a certificate has none: it opens the calibration whose
 * certificate names it (`above`).
 */
export const recordHref = (node: ChainNode, above: string | undefined): string | undefined => {
  const { facts } = node;
  if (node.kind === "result" && facts.run && facts.sensor && facts.position)
    return `/review/${facts.run}/${facts.sensor}/${facts.position}`;
  if (node.kind === "run" && facts.run) return `/runs/${facts.run}`;
  if (node.kind === "calibration" && facts.equipmentId && facts.calibrationId)
    return `/standards/${facts.equipmentId}/calibrations/${facts.calibrationId}`;
  if (facts.equipmentId) return `/standards/${facts.equipmentId}`;
  return above;
};
