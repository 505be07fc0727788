import type { StoneFolder } from '../../app/contract/work.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { shortMethod } from '../runs/method-words.ts';
import { protocolRows } from './protocol-rows.ts';

/** What the house's protocol asks for on this stone: done, next, still to do. */
export function ProtocolList({ folder, onTest }: { readonly folder: StoneFolder; readonly onTest: (method: MethodId) => void }) {
  const title = folder.protocol === undefined ? `Tests of ${folder.stone.label}` : `Protocol: ${folder.protocol.name}`;
  return (
    <section aria-label={`Tests of ${folder.stone.label}`}>
      <p className="label tree-title">{title}</p>
      {protocolRows(folder).map(({ method, says, title: tip }) => (
        <button key={method} type="button" className={`tree-test ${says === 'next' ? 'tree-test-next' : ''}`} title={tip} onClick={() => { onTest(method); }}>
          <span className="one-line">{shortMethod(method)}</span><span className="mono">{says}</span>
        </button>
      ))}
    </section>
  );
}
