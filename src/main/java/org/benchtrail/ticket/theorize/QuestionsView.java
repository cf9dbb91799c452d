package org.benchtrail.ticket.theorize;

import java.util.List;
import org.benchtrail.platform.Option;

/** The questions that the causes of a ticket are told apart by, without what they weigh. */
public record QuestionsView(List<RankingView.Question> all) {

    /** The answers that follow from what was recorded elsewhere. */
    public List<RankingView.Question> derived() {
        return all.stream().filter(q -> q.isDerived() && !q.notNamed()).toList();
    }

    /** What whoever reported the trouble would have named, and did not. */
    public List<RankingView.Question> notNamed() {
        return all.stream().filter(RankingView.Question::notNamed).toList();
    }

    /** The questions that are answered by looking or asking. */
    public List<RankingView.Question> answerable() {
        return all.stream().filter(q -> !q.reading()).toList();
    }

    /** The readings that the category's causes are told apart by. */
    public List<Option> measurable() {
        return all.stream()
                .filter(RankingView.Question::reading)
                .map(q -> new Option(q.id(), q.label()))
                .toList();
    }
}
