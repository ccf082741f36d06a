/** Makes the real program break down when it gets a signal that it doesn't use. */
process.on('SIGUSR2', () => {
  throw new Error('made to fail');
});
