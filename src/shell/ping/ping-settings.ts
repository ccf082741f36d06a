/** The user's choices that decide by which ways a ping leaves. */
export type PingSettings = {
  readonly desktop: boolean;
  readonly bell: 'every' | 'loud' | 'never';
  readonly terminal: 'off' | 'osc9' | 'osc777' | 'osc99';
  /** As the setting keeps it; read by `readPingHook`. */
  readonly hook: string;
};
