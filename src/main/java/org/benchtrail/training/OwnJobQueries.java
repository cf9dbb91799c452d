package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.Times;

/** What can be read of mentors' jobs: the texts by who may, what was given by whom it was given to. */
@ApplicationScoped
@Transactional
class OwnJobQueries {
    private static final String UNREADABLE = "A job whose text cannot be read yet";

    private final OwnJobStore store;
    private final OwnJobActs acts;
    private final OwnJobChecks checks;
    private final Directory people;

    OwnJobQueries(OwnJobStore store, OwnJobActs acts, OwnJobChecks checks, Directory people) {
        this.store = store;
        this.acts = acts;
        this.checks = checks;
        this.people = people;
    }

    /** @param author empty for the viewer's own */
    record Line(int id, String title, String author, String saved, String state, long given) {}

    List<Line> list(Actor viewer, ZoneId zone) {
        OwnJobActs.require(viewer);
        Map<String, String> names = people.names();
        return store.list(viewer.account(), viewer.is(Role.SUPERVISOR)).stream()
                .map(row -> new Line(
                        row.id(),
                        title(row.text()),
                        row.author().equals(viewer.account()) ? "" : names.getOrDefault(row.author(), row.author()),
                        Times.text(row.saved(), zone),
                        state(row),
                        row.given()))
                .toList();
    }

    private String state(OwnJobStore.Row row) {
        if (row.withdrawn() != null) {
            return "withdrawn";
        }
        if (checks.progress(row.ref()).isPresent()) {
            return "being checked";
        }
        if (row.clean() == null) {
            return "draft, not checked";
        }
        return row.clean() ? "can be given" : "draft, its check fails";
    }

    private static String title(String text) {
        return title(OwnJobText.read(text));
    }

    private static String title(OwnJobText.Read read) {
        return read.job().map(OwnJob::symptom).orElse(UNREADABLE);
    }

    /**
     * @param version of the text; 0 for the newest
     * @throws NotFound if the viewer may not read it, or there is no such text
     */
    OwnJobView job(int id, int version, Actor viewer, ZoneId zone) {
        OwnJobActs.require(viewer);
        OwnJobStore.Row row =
                OwnJobActs.readable(store.one(id).orElseThrow(() -> new NotFound("practice job " + id)), viewer);
        boolean older = version != 0 && version != row.version();
        OwnJobStore.Ref ref = older ? new OwnJobStore.Ref(id, version) : row.ref();
        String text = older
                ? store.text(ref).orElseThrow(() -> new NotFound("text " + version + " of practice job " + id))
                : row.text();
        OwnJobText.Read read = OwnJobText.read(text);
        Optional<OwnJobStore.Checked> checked = store.checked(ref);
        Map<String, String> names = people.names();
        boolean own = row.author().equals(viewer.account()) && row.withdrawn() == null;
        return new OwnJobView(
                id,
                row.version(),
                title(read),
                names.getOrDefault(row.author(), row.author()),
                text,
                read.faults(),
                checks.progress(ref).orElse(-1),
                checked.map(c -> Times.text(c.checked(), zone)).orElse(""),
                checked.map(c -> OwnJobView.Result.of(c.result())).orElse(null),
                own
                        ? acts.trainees(viewer).stream()
                                .map(t -> new OwnJobView.Option(t.account(), t.name()))
                                .toList()
                        : List.of(),
                store.people(id).stream()
                        .map(g -> names.getOrDefault(g.person(), g.person()) + ", text " + g.version() + ", "
                                + Times.text(g.given(), zone) + (g.begun() ? ", begun" : ", not begun"))
                        .toList(),
                store.versions(id).stream()
                        .map(v -> new OwnJobView.Version(v.version(), Times.text(v.saved(), zone)))
                        .toList(),
                own,
                row.withdrawn() != null,
                older ? version : 0);
    }

    /** A job that the viewer may begin. */
    record Offer(int given, String title, String by) {}

    List<Offer> offers(Actor viewer) {
        List<OwnJobStore.Waiting> waiting = store.waiting(viewer.account());
        Map<String, String> names =
                people.names(waiting.stream().map(OwnJobStore.Waiting::by).toList());
        return waiting.stream()
                .map(w -> new Offer(w.id(), title(w.text()), names.getOrDefault(w.by(), w.by())))
                .toList();
    }
}
