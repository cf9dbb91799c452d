package org.benchtrail.proposals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.transaction.Transactional;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/**
 * The one way to a change that takes two supervisors. Nothing is changed before another supervisor than the proposer confirms
 * it; whoever proposed it can withdraw it until then. A change that was made is undone by proposing the opposite.
 */
@ApplicationScoped
@Transactional
public class ProposalActs {
    private static final int LONGEST_NOTE = 500;
    private static final int MOST = 100;

    private final ProposalRows rows;
    private final Directory people;
    private final Clock clock;
    private final Instance<ProposedChange<?>> kinds;
    private final ObjectMapper mapper;

    ProposalActs(
            ProposalRows rows, Directory people, Clock clock, Instance<ProposedChange<?>> kinds, ObjectMapper mapper) {
        this.rows = rows;
        this.people = people;
        this.clock = clock;
        this.kinds = kinds;
        this.mapper = mapper;
    }

    /**
     * Proposes a change.
     *
     * @param note why
     * @throws Invalid if no reason is given, the change cannot be made, or the same waits already
     */
    public <C extends Record> ProposalView propose(ProposedChange<C> kind, C change, String note, Actor by) {
        Permissions.require(Permission.DECIDE_PROPOSALS, by);
        kind.requireReason(change, note);
        requireWords(
                note, "note", "Say in a few words why, for whoever confirms it and for those who look at it later.");
        kind.differences(change);
        String json = json(change);
        new Invalid.Collector()
                .require(
                        !rows.waits(kind.name(), json), "note", "This is proposed already: another supervisor decides.")
                .throwIfAny();
        Proposal proposal = new Proposal();
        proposal.kind = kind.name();
        proposal.what = kind.words(change);
        proposal.change = json;
        proposal.note = PlainText.line(note);
        proposal.proposedBy = by.account();
        proposal.proposedAt = clock.instant();
        rows.persistAndFlush(proposal);
        return view(proposal);
    }

    /**
     * Makes what was proposed.
     *
     * @throws Invalid if {@code by} proposed it, it is decided, or it cannot be made any more; it stays as it is then
     */
    public ProposalView confirm(long id, Actor by) {
        Proposal proposal = open(id, by);
        requireOther(proposal, by);
        proposal.made = make(kind(proposal.kind), proposal, by);
        proposal.end(ProposalState.CONFIRMED, by.account(), clock.instant());
        return view(proposal);
    }

    private <C extends Record> String make(ProposedChange<C> kind, Proposal proposal, Actor by) {
        return kind.make(read(kind, proposal.change), new Agreement(proposal.proposedBy, by.account(), proposal.note));
    }

    /** Another supervisor than who proposed it does not agree. */
    public ProposalView decline(long id, String reason, Actor by) {
        Proposal proposal = open(id, by);
        requireOther(proposal, by);
        requireWords(reason, "reason", "Say why not, for who proposed it.");
        proposal.answer = PlainText.line(reason);
        proposal.end(ProposalState.DECLINED, by.account(), clock.instant());
        return view(proposal);
    }

    /** Whoever proposed it takes it back. */
    public ProposalView withdraw(long id, Actor by) {
        Proposal proposal = open(id, by);
        new Invalid.Collector()
                .require(
                        proposal.proposedBy.equals(by.account()),
                        "proposal",
                        "Only who proposed it withdraws it: decline it instead.")
                .throwIfAny();
        proposal.end(ProposalState.WITHDRAWN, by.account(), clock.instant());
        return view(proposal);
    }

    /** What waits, the longest waiting first; at most 100. */
    public List<ProposalView> waiting(Actor by) {
        Permissions.require(Permission.DECIDE_PROPOSALS, by);
        return views(rows.open(MOST));
    }

    /** What was decided, the last first; at most 100. */
    public List<ProposalView> decided(Actor by) {
        Permissions.require(Permission.DECIDE_PROPOSALS, by);
        return views(rows.decided(MOST));
    }

    public ProposalDetails details(long id, Actor by) {
        Permissions.require(Permission.DECIDE_PROPOSALS, by);
        Proposal proposal = rows.present(id);
        if (proposal.state != ProposalState.OPEN) {
            return new ProposalDetails(view(proposal), List.of(), "");
        }
        try {
            return new ProposalDetails(view(proposal), differences(kind(proposal.kind), proposal), "");
        } catch (Invalid e) {
            String why = e.problems().get(0).sentence();
            return new ProposalDetails(view(proposal), List.of(), why);
        }
    }

    private <C extends Record> List<Difference> differences(ProposedChange<C> kind, Proposal proposal) {
        return kind.differences(read(kind, proposal.change));
    }

    private Proposal open(long id, Actor by) {
        Permissions.require(Permission.DECIDE_PROPOSALS, by);
        Proposal proposal = rows.locked(id);
        new Invalid.Collector()
                .require(
                        proposal.state == ProposalState.OPEN,
                        "proposal",
                        "Proposal " + id + " is decided already: it is " + proposal.state.words() + ".")
                .throwIfAny();
        return proposal;
    }

    private void requireOther(Proposal proposal, Actor by) {
        new Invalid.Collector()
                .require(
                        !proposal.proposedBy.equals(by.account()),
                        "proposal",
                        "You proposed this yourself. " + waitsFor(proposal, supervisors()))
                .throwIfAny();
    }

    private static void requireWords(String text, String field, String otherwise) {
        String line = PlainText.line(text);
        new Invalid.Collector()
                .require(!line.isEmpty() && line.length() <= LONGEST_NOTE && PlainText.isText(line), field, otherwise)
                .throwIfAny();
    }

    private ProposedChange<?> kind(String name) {
        return kinds.stream()
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no kind of change is named " + name));
    }

    private ProposalView view(Proposal proposal) {
        return views(List.of(proposal)).get(0);
    }

    private List<ProposalView> views(List<Proposal> found) {
        List<Actor> supervisors =
                found.stream().anyMatch(p -> p.state == ProposalState.OPEN) ? supervisors() : List.of();
        return found.stream()
                .map(p -> ProposalView.of(p, p.state == ProposalState.OPEN ? waitsFor(p, supervisors) : ""))
                .toList();
    }

    private List<Actor> supervisors() {
        return people.allowed(Permission.DECIDE_PROPOSALS);
    }

    private static String waitsFor(Proposal proposal, List<Actor> supervisors) {
        String others = supervisors.stream()
                .filter(actor -> !actor.account().equals(proposal.proposedBy))
                .map(Actor::name)
                .collect(Collectors.joining(", "));
        return others.isEmpty()
                ? "There is no other supervisor here: ask an administrator to give another person that role."
                        + " Nothing changes until they confirm it."
                : "Another supervisor has to confirm it: " + others + ".";
    }

    private String json(Record change) {
        try {
            return mapper.writeValueAsString(change);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    private <C extends Record> C read(ProposedChange<C> kind, String json) {
        try {
            return mapper.readValue(json, kind.change());
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
