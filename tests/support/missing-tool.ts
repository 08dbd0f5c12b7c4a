/** Begins the note of each test that was left out because something outside is not installed. */
export const missingToolNote = 'needs ';
