/** Blanks, hyphens and case are written differently on one and the same thing. */
const plain = (serial: string): string => serial.toUpperCase().replaceAll(/[\s./_-]/g, "");

export const isSameSerial = (one: string, other: string): boolean => plain(one) === plain(other);
