// The packages that the tool is built with and the texts of their licences, over the page. The build keeps the file for work offline.
import { useEffect, useState } from 'react';
import { useSay } from '../../words';
import { HelpDialog } from './HelpDialog';
import { LICENCES, type Licence, licencesIn } from './licences';

export function LicencesDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <HelpDialog title="Licences" open={open} onClose={onClose}>
      <Texts />
    </HelpDialog>
  );
}

function Texts() {
  const say = useSay();
  const licences = useLicences();
  if (licences?.length === 0)
    return (
      <p role="alert">
        {say('The licences could not be read. Load the page again, then open this list again.')}
      </p>
    );
  return (
    <>
      <p className="quiet" role="status">
        {licences
          ? say('Built with {count} packages by others:', { count: licences.length })
          : say('Reading …')}
      </p>
      {licences?.map(({ name, kind, text }) => (
        <details key={name}>
          <summary>
            {name} <span className="quiet">{kind}</span>
          </summary>
          <p className="licence-text">{text}</p>
        </details>
      ))}
    </>
  );
}

/** The licences once they are read; null until then, none where they cannot be read. */
function useLicences(): readonly Licence[] | null {
  const [licences, setLicences] = useState<readonly Licence[] | null>(null);
  useEffect(() => {
    const gone = new AbortController();
    const read = async () => {
      const answer = await fetch(LICENCES, { signal: gone.signal });
      return answer.ok ? licencesIn(await answer.text()) : [];
    };
    void read()
      .catch(() => [])
      .then((read) => {
        if (!gone.signal.aborted) setLicences(read);
      });
    return () => gone.abort();
  }, []);
  return licences;
}
