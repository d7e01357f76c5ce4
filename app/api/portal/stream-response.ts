const headers = { "cache-control": "private, no-store", "x-content-type-options": "nosniff" } as const;

/** A file as it is made: asked for piece by piece, so that a slow line fills no memory. */
export const streamResponse = (
  chunks: AsyncGenerator<Uint8Array>,
  file: { readonly name: string; readonly type: string },
): Response => {
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await chunks.next();
      if (done) controller.close();
      else controller.enqueue(value);
    },
    async cancel() {
      await chunks.return(undefined);
    },
  });
  return new Response(body, {
    headers: {
      ...headers,
      "content-type": file.type,
      "content-disposition": `attachment; filename="${file.name}"`,
    },
  });
};
