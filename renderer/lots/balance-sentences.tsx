import type { Balance } from '../../app/lots/split-balance.ts';

/** Whether the parts add up, in words. */
export function BalanceSentences({ balance }: { readonly balance: Balance }) {
  return <div className="stack gap4" role="status">{balance.sentences.map(({ text, wrong }) => <p key={text} className={wrong ? 'warn' : 'second'}>{text}</p>)}</div>;
}
