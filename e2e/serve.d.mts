import type { Server } from 'node:http';

/** Serves the build at a port of this machine; resolves once it is served, with the server. */
export function serveBuild(port: number): Promise<Server>;
