package org.benchtrail.ticket.erasure;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposedChange;
import org.benchtrail.ticket.RequesterErasure;
import org.benchtrail.ticket.WordsErasure;

/** Words of entries are to be erased. What is stored of the proposal names ticket and entries alone. */
@ApplicationScoped
class WordsChange implements ProposedChange<WordsChange.OfEntries> {
    private final WordsErasure erasure;
    private final RequesterErasure requesters;

    WordsChange(WordsErasure erasure, RequesterErasure requesters) {
        this.erasure = erasure;
        this.requesters = requesters;
    }

    /** What is proposed. */
    record OfEntries(String ticket, List<Integer> entries) {
        OfEntries {
            entries = List.copyOf(entries);
        }

        TicketNumber number() {
            return TicketNumber.parse(ticket);
        }
    }

    @Override
    public String name() {
        return "words-erased";
    }

    @Override
    public Class<OfEntries> change() {
        return OfEntries.class;
    }

    @Override
    public String words(OfEntries change) {
        List<String> numbers = change.entries.stream().map(String::valueOf).toList();
        return "Erase the words of " + (numbers.size() == 1 ? "entry " : "entries ") + String.join(", ", numbers)
                + " of ticket " + change.ticket;
    }

    @Override
    public List<Difference> differences(OfEntries change) {
        return erasure.chosen(change.number(), change.entries).stream()
                .map(w -> new Difference("Entry " + w.entry(), w.words(), ""))
                .toList();
    }

    @Override
    public void requireReason(OfEntries change, String reason) {
        if (requesters.kept(change.number()).erased() == null) {
            requesters.requireReason(change.number(), reason);
        }
    }

    @Override
    public String make(OfEntries change, Agreement agreed) {
        erasure.erase(change.number(), change.entries, agreed.proposer() + ", " + agreed.confirmer(), agreed.note());
        return "/tickets/" + change.ticket + "/erasing";
    }
}
