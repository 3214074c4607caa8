// Words of the trade: who uses one of them explains it in the glossary. One a word or two words; a plural counts as the same word.

export const TRADE_WORDS: readonly string[] = [
  // The bow and what is on it.
  'axle', 'axle clip', 'axle to axle', 'brace height', 'cable', 'cable guard', 'cam', 'cam lean', 'D-loop', 'draw stop', 'end loop', 'grip', 'half twist', 'hybrid', 'idler', 'kisser',
  'let-off', 'limb', 'limb bolt', 'lock screw', 'module', 'nock height', 'nock set', 'nocking point', 'peep', 'pocket', 'quiver', 'riser', 'riser shelf', 'screw-adjust', 'serving',
  'sight', 'single cam', 'sling', 'spacer', 'stabiliser', 'stops', 'tiller', 'timing', 'timing marks', 'track', 'two-track', 'yoke',
  // The rest.
  'blade', 'centre shot', 'containment', 'cord', 'drop-away', 'launcher', 'prong', 'rest',
  // The arrow.
  'broadhead', 'bushing', 'cock vane', 'crest', 'field point', 'fletched', 'fletching', 'FOC', 'helical', 'insert', 'mechanical head', 'nock', 'outsert', 'point', 'post', 'practice head',
  'shaft', 'spine', 'tail', 'unfletched', 'vane', 'wrap',
  // Tools.
  'backstop', 'bow scale', 'bow square', 'bubble', 'chronograph', 'draw board', 'grain', 'head wrench', 'loop pliers', 'paper frame', 'press', 'release aid', 'rig', 'spinner', 'witness mark',
  // Shooting and what is read from it.
  'anchor', 'bare backstop', 'contact', 'creep', 'crossing point', 'draw length', 'draw weight', 'dry fire', 'flex', 'flier', 'full draw', 'group', 'holding weight', 'let down',
  'peak draw weight', 'plumb line', 'powder', 'scatter', 'spread', 'tear', 'torque', 'tuning arrows', 'valley', 'walk-back',
];
