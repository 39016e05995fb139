import absent from '../../../../messages/de/absent.json' with { type: 'json' };
import findings from '../../../../messages/de/findings.json' with { type: 'json' };
import inputs from '../../../../messages/de/inputs.json' with { type: 'json' };
import methods from '../../../../messages/de/methods.json' with { type: 'json' };
import problems from '../../../../messages/de/problems.json' with { type: 'json' };
import remedies from '../../../../messages/de/remedies.json' with { type: 'json' };
import values from '../../../../messages/de/values.json' with { type: 'json' };
import written from '../../../../messages/de/written.json' with { type: 'json' };
import type { Messages } from './messages.ts';

export const GERMAN = { absent, findings, inputs, methods, problems, remedies, values, written, decimal: ',' } as unknown as Messages;
