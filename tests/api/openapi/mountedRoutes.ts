// Every route the app mounts, as "get /v1/plans/{id}": watched while the app is put together, since Express keeps no list of paths.
import { Router } from 'express';
import { vi } from 'vitest';
import { createApp } from '../../../src/api/createApp.ts';
import type { ApiParts } from '../../../src/api/parts.ts';

type Mount = { readonly on: unknown; readonly path: string; readonly child: unknown };
type Watched = { readonly mounts: readonly Mount[]; readonly app: unknown };

function watched(parts: ApiParts): Watched {
  const mounts: Mount[] = [];
  // A router is a function made an instance: its methods stand two steps up.
  const prototype = Object.getPrototypeOf(Object.getPrototypeOf(Router()));
  const { route, use } = prototype;
  const spies = [
    vi.spyOn(prototype, 'route').mockImplementation(function (this: unknown, path: unknown) {
      const child: unknown = route.call(this, path);
      mounts.push({ on: this, path: String(path), child });
      return child;
    }),
    vi.spyOn(prototype, 'use').mockImplementation(function (this: unknown, first: unknown, ...more: unknown[]) {
      const path = typeof first === 'string' ? first : '/';
      const children = typeof first === 'string' ? more : [first, ...more];
      for (const child of children.flat()) mounts.push({ on: this, path, child });
      return use.call(this, first, ...more);
    }),
  ];
  const app = createApp(parts);
  for (const spy of spies) spy.mockRestore();
  return { mounts, app: app.router };
}

function methodsOf(route: unknown): readonly string[] {
  if (typeof route !== 'object' || route === null || !('methods' in route)) return [];
  return Object.keys(route.methods ?? {}).filter((method) => method !== '_all');
}

function below(router: unknown, before: string, mounts: readonly Mount[]): readonly string[] {
  return mounts
    .filter(({ on }) => on === router)
    .flatMap(({ path, child }) => {
      const whole = `${before}${path === '/' ? '' : path}`;
      return [...methodsOf(child).map((method) => `${method} ${whole}`), ...below(child, whole, mounts)];
    });
}

export function mountedRoutes(parts: ApiParts): readonly string[] {
  const { mounts, app } = watched(parts);
  const found = below(app, '', mounts).map((line) => line.replaceAll(/:(\w+)/g, '{$1}'));
  return [...new Set(found)].sort();
}
