package org.benchtrail.core.method;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Something recorded on a ticket. A fact is plain data in the past tense; its constructor refuses what is malformed with
 * {@link org.benchtrail.core.Invalid}. Other facts are referred to by the number of the entry that recorded them.
 *
 * <p>Every kind answers the questions below, in its own file; guards, corrections, storage, API, pages and trail text are
 * loops over these answers. A question that most kinds answer alike has that answer as its default. {@link FactKinds} lists
 * the kinds.
 */
public interface Fact {

    /** The step whose question this answers; null for what belongs to no step (moves, hand-overs, waivers, corrections). */
    @Nullable
    Step step();

    /** The step under which it is shown; null if under none. */
    default @Nullable Step shownUnder() {
        return step();
    }

    /**
     * Whether it may be added, marked late, once its step has been left. Choices, checks, actions and signatures may not:
     * to make them again is to go round again.
     */
    default boolean lateAllowed() {
        return false;
    }

    /** How long an answer of this kind is taken for the present one. */
    default Lasts lasts() {
        return Lasts.ROUND;
    }

    /** Whether it may be recorded on a ticket that has been closed. */
    default boolean possibleWhenClosed() {
        return false;
    }

    /** Whether it may be recorded while a hazard stops the work: nothing is measured, tested or done until it is cleared. */
    default boolean possibleWhileStopped() {
        return false;
    }

    // ---- who may record it

    /** What keeps that person from recording it here; empty if nothing does. Most facts are the assignee's. */
    default List<Missing> refusedTo(Actor actor, Situation s) {
        return Persons.assignee(s.sheet().course(), actor);
    }

    /** What part in the ticket it is to record it; what answers a step's question is work on it. */
    default Part takesPart() {
        return step() == null ? Part.NONE : Part.WORK;
    }

    // ---- what it refers to, and whether it is sound on this sheet

    /** The earlier entries it names; each has to be there, and of that kind. */
    default List<Reference> references() {
        return List.of();
    }

    /**
     * What keeps it from being recorded on this sheet now, whoever asks; empty if nothing does. References have been looked up
     * before.
     *
     * @throws org.benchtrail.core.Invalid if it does not fit what it refers to
     */
    default List<Missing> unsound(Situation s, Actor actor) {
        return List.of();
    }

    /** The deed that it is, if it is one that cautions guard, with them; empty for most. */
    default Optional<GuardedAct> guardedAct(JobSheet sheet) {
        return Optional.empty();
    }

    // ---- whether and by whom it may be put right

    /** Answers of which the latest counts are not corrected but given again; moves, approvals and signatures are neither. */
    default Correctable correctable() {
        return Correctable.NEVER;
    }

    /**
     * What keeps it, as it stands, from being replaced or struck out; empty if nothing does.
     *
     * @param self how it stands on the sheet
     * @param replacement of the same kind; null strikes it out
     */
    default List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        return List.of();
    }

    /** Whether a later one of its kind is taken instead of it. */
    default boolean replacesEarlier() {
        return false;
    }

    /**
     * Whether something that this fact obliges to would be owed no longer, or less of it, if that stood in its place.
     *
     * @param replacement of the same kind; null strikes it out
     */
    default boolean isLessenedBy(@Nullable Fact replacement) {
        return false;
    }

    // ---- what a server adds

    /** Whether it is the server's own word, which nobody else gives: then the server stands as its actor. */
    default boolean saidByServer() {
        return false;
    }

    /** The fact with what the server knows better than whoever asks. */
    default Fact completedBy(ServerKnowledge server) {
        return this;
    }

    /** Whether the server records first how the causes were ranked at that moment. */
    default boolean restsOnRanking() {
        return false;
    }

    /** Whether it tells how the causes were ranked. */
    default boolean tellsRanking() {
        return false;
    }

    // ---- what it tells others

    /** What it says, in a line that stands beside its kind; empty if the kind says it all. */
    String told(Telling reader);

    /** Where it stands in a record of that sheet. */
    default RecordPlace placeIn(JobSheet sheet) {
        return RecordPlace.LINE;
    }

    /** What it says about a finding of the cause catalogue; empty for most. */
    default Optional<CatalogueAnswer> says(JobSheet sheet) {
        return Optional.empty();
    }

    /** What it says that the catalogue may take for an answer, though no finding was named; empty for most. */
    default List<Sign> signs(JobSheet sheet) {
        return List.of();
    }

    /** Free words that may suggest an answer to a finding; they weigh nothing themselves. */
    default List<Wording> wordings() {
        return List.of();
    }

    /** Whether something was done to the device: what was seen before says little about what is seen after. */
    default boolean changesDevice() {
        return false;
    }

    /** Whether it says what the device showed: on practice the device alone says that. */
    default boolean comesFromDevice() {
        return false;
    }

    /** What it does to the theory that was active. */
    default TheoryFate theoryFate() {
        return TheoryFate.UNTOUCHED;
    }

    /** Texts in which a later technician would look for this ticket; empty for most. */
    default List<String> story() {
        return List.of();
    }
}
