/** What a checkup looks at. */
type CheckupPart =
  | 'store'
  | 'lock'
  | 'backups'
  | 'folder'
  | 'keeper'
  | 'notifier'
  | 'hook'
  | 'awake'
  | 'terminal'
  | 'clock'
  | 'schedules';

/** One thing that was looked at. */
export type Finding = {
  readonly about: CheckupPart;
  /** `note`: worth knowing, and nothing that must be done. */
  readonly state: 'in order' | 'note' | 'wrong';
  readonly says: string;
  /** What to do; null where nothing is. */
  readonly todo: string | null;
};

/** Makes findings about one part. */
export const findingsAbout = (about: CheckupPart) => ({
  fine: (says: string): Finding => ({ about, state: 'in order', says, todo: null }),
  note: (says: string, todo: string | null = null): Finding => ({
    about,
    state: 'note',
    says,
    todo,
  }),
  wrong: (says: string, todo: string): Finding => ({ about, state: 'wrong', says, todo }),
});
