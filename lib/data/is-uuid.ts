/** An id from an address that is no id at all is simply not there; the database would answer with an error. */
export const isUuid = (id: string): boolean => /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(id);
