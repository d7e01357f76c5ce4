import { BlockList, isIP } from "node:net";

/**
 * Addresses that are not somebody's on the internet: this machine, private networks, link-local (where cloud machines
 * keep their secrets), and what is reserved (RFC 6890, and its successors in the IANA special-purpose registries).
 */
const own = new BlockList();
for (const [network, prefix] of [
  ["0.0.0.0", 8],
  ["10.0.0.0", 8],
  ["100.64.0.0", 10],
  ["127.0.0.0", 8],
  ["169.254.0.0", 16],
  ["172.16.0.0", 12],
  ["192.0.0.0", 24],
  ["192.168.0.0", 16],
  ["198.18.0.0", 15],
  ["224.0.0.0", 3],
] as const)
  own.addSubnet(network, prefix, "ipv4");
for (const [network, prefix] of [
  ["::", 127],
  ["64:ff9b::", 96],
  ["fc00::", 7],
  ["fe80::", 10],
  ["ff00::", 8],
] as const)
  own.addSubnet(network, prefix, "ipv6");

/** An IPv4 address written as IPv6 ("::ffff:10.0.0.1") is held to the rules of IPv4 by the list itself. */
export const isOwnNetwork = (address: string): boolean =>
  isIP(address) === 0 || own.check(address, isIP(address) === 6 ? "ipv6" : "ipv4");
