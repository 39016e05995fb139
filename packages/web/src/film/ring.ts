let audio: AudioContext | null = null;

/** Wakes the sound under a press or a key: browsers let it speak only then. */
export function wakeSound(): void {
  try { audio ??= new AudioContext(); void audio.resume(); } catch { audio = null; }
}

/** Two strokes of a small glass bell of our own: a fundamental, its second partial a little wide, both dying away. */
export function ring(): void {
  wakeSound();
  const to = audio;
  if (to === null) return;
  for (const [after, pitch] of [[0, 988], [0.28, 1318]] as const) for (const [partial, loud] of [[1, 0.22], [2.76, 0.07]] as const) {
    const from = to.currentTime + after, tone = to.createOscillator(), level = to.createGain();
    tone.frequency.value = pitch * partial;
    level.gain.setValueAtTime(0.0001, from);
    level.gain.exponentialRampToValueAtTime(loud, from + 0.008);
    level.gain.exponentialRampToValueAtTime(0.0001, from + 0.9);
    tone.connect(level).connect(to.destination);
    tone.start(from);
    tone.stop(from + 0.95);
  }
}
