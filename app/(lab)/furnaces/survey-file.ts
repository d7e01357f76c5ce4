/** What came with a form's file field; null where none was chosen. A browser sends an empty one then. */
export const uploadedFile = async (
  data: FormData,
  name: string,
): Promise<{ readonly fileName: string; readonly bytes: Uint8Array } | null> => {
  const file = data.get(name);
  if (!(file instanceof File) || file.size === 0) return null;
  return { fileName: file.name.slice(0, 200), bytes: new Uint8Array(await file.arrayBuffer()) };
};
