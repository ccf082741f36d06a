export * from './model.ts';
export * from './edges.ts';
export * from './explain-edge.ts';
export * from './evaluate.ts';
export * from './own-time.ts';
export * from './pings.ts';
export * from './air/index.ts';
