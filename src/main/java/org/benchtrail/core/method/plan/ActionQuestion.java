package org.benchtrail.core.method.plan;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What is asked outright of each action, and the words that speak for a yes (common practice, no source). */
enum ActionQuestion {
    STORAGE(
            "touchesStorage",
            "touches stored data",
            "format\\w*|reformat\\w*|reinstall\\w*|delet\\w+|wip(e|es|ed|ing)|eras\\w+|overwrit\\w+|(re)?partition\\w*"
                    + "|(re)?initiali[sz]\\w+|factory (reset|settings)|restor\\w+|(re)?imag(e|es|ed|ing)|clon(e|es|ed|ing)"
                    + "|rebuild\\w*|migrat\\w+|defragment\\w*|((replace|swap|exchange|remov)\\w* (the |a |its |of the )?"
                    + "(\\w+ )?(drive|disk|ssd|hdd|array|volume))") {
        @Override
        boolean yes(ActionPlanned action) {
            return action.touchesStorage();
        }
    },
    IRREVERSIBLE(
            "irreversible",
            "is irreversible",
            "format\\w*|reformat\\w*|delet\\w+|wip(e|es|ed|ing)|eras\\w+|overwrit\\w+|repartition\\w*"
                    + "|(re)?initiali[sz]\\w+|factory (reset|settings)|shred\\w*|destroy\\w*|dispos\\w+|scrap\\w*"
                    + "|(flash\\w*|updat\\w+|upgrad\\w+) (the |its )?(\\w+ )?(firmware|bios|uefi)|reinstall\\w*") {
        @Override
        boolean yes(ActionPlanned action) {
            return action.irreversible();
        }
    },
    PART(
            "usesPart",
            "uses a part",
            "replac\\w+|swap\\w*|exchang\\w+|(fit|fits|fitted|fitting|install|installs|installed|installing|put in|insert"
                    + "|inserts) (a |an |the |another |two |four )?(new|spare|other|bigger|larger|second)") {
        @Override
        boolean yes(ActionPlanned action) {
            return Boolean.TRUE.equals(action.usesPart());
        }
    };

    private final String field;
    private final String words;
    private final Pattern yes;

    ActionQuestion(String field, String words, String yes) {
        this.field = field;
        this.words = words;
        this.yes = Pattern.compile("\\b(" + yes + ")\\b", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CHARACTER_CLASS);
    }

    abstract boolean yes(ActionPlanned action);

    /** Component of the action that answers it. */
    String field() {
        return field;
    }

    /** What is said no to. */
    String words() {
        return words;
    }

    /** Those that are answered with no, where the action's words speak for a yes. */
    static List<ActionQuestion> contradicted(ActionPlanned action) {
        return Stream.of(values())
                .filter(q -> !q.yes(action) && q.yes.matcher(action.what()).find())
                .toList();
    }
}
