/** An address as it is printed: whom it is for, where somebody is named, and its lines below. */
export const addressBlock = ({
  contactName,
  addressLines,
}: {
  readonly contactName: string;
  readonly addressLines: string;
}): string => [contactName, addressLines].filter(Boolean).join("\n");
