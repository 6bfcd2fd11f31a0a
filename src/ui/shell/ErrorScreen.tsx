// Replaces the screen when a part of it throws an error, or when its code could not be fetched: it shows the reason and offers to save
// the project to a file.
import { Component, type ReactNode } from 'react';
import { writeProject } from '../../model/reading/read';
import { documentOf } from '../../store/app';
import type { Session } from '../../store/session';
import { downloadText, projectFileName } from '../../store/storage/projectFiles';
import { PartMissing } from '../later';
import { SessionContext } from '../session';

interface Props {
  readonly children: ReactNode;
  /** Whether it is told over the page: for a part that has no room of its own. */
  readonly over?: boolean;
}

interface State {
  readonly error: Error | null;
  /** The file that the quilt was saved to. */
  readonly file: string | null;
}

const SOUND: State = { error: null, file: null };

export class ErrorScreen extends Component<Props, State> {
  static override contextType = SessionContext;
  declare context: Session | null;
  override state = SOUND;

  static getDerivedStateFromError(error: unknown): Partial<State> {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  private readonly saveFile = () => {
    if (!this.context) return;
    const project = documentOf(this.context.app.getState());
    const file = projectFileName(project.name);
    downloadText(file, writeProject(project, this.context.pictures.state.getState().pictures));
    this.context.filed();
    this.setState({ file });
  };

  private readonly goOn = () => {
    const { error } = this.state;
    if (error instanceof PartMissing) error.forget();
    else this.context?.app.getState().undo();
    this.setState(SOUND);
  };

  override render() {
    const { error, file } = this.state;
    if (error === null) return this.props.children;
    const missing = error instanceof PartMissing;
    return (
      <div
        role="alert"
        className={this.props.over ? 'stack popover over-page' : 'stack'}
        style={{ padding: 24, maxWidth: '40rem' }}
      >
        {missing ? (
          <>
            <h2>This part of the screen could not be fetched</h2>
            <p>
              The server is away, or has a newer version of Wedgewall. Your quilt is not lost. Try again, or
              reload the page.
            </p>
          </>
        ) : (
          <>
            <h2>This part of the screen stopped working</h2>
            <p>
              Your quilt is not lost. Undo the last change, or save the quilt to a file and reload the page.
            </p>
            <p className="quiet">{error.message}</p>
          </>
        )}
        <div className="row">
          <button type="button" className="button solid" onClick={this.goOn}>
            {missing ? 'Try again' : 'Undo and continue'}
          </button>
          <button type="button" className="button" onClick={this.saveFile}>
            Save to a file
          </button>
          <button type="button" className="button" onClick={() => globalThis.location.reload()}>
            Reload the page
          </button>
        </div>
        {file === null ? null : <p>Saved as {file}.</p>}
      </div>
    );
  }
}
