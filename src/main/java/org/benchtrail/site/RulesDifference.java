package org.benchtrail.site;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;

/** What a decision changed: a thing, and what was said of it before and after; empty where nothing was. */
public record RulesDifference(String what, String before, String after) {

    static List<RulesDifference> between(RulesText before, RulesText after) {
        List<RulesDifference> all = new ArrayList<>();
        all.add(new RulesDifference("Zone", before.zone(), after.zone()));
        for (DayOfWeek day : DayOfWeek.values()) {
            String name = day.name().charAt(0) + day.name().substring(1).toLowerCase(Locale.ROOT);
            all.add(new RulesDifference(name, before.week(day), after.week(day)));
        }
        all.add(new RulesDifference("Holidays", before.holidays(), after.holidays()));
        for (Priority priority : Priority.values()) {
            all.add(new RulesDifference(
                    "Times for " + priority.words(), times(before.times(priority)), times(after.times(priority))));
        }
        all.add(new RulesDifference("Clock stands still for", stops(before), stops(after)));
        all.add(new RulesDifference("Mains, V", before.mains(), after.mains()));
        all.add(new RulesDifference("Repair is advised at odds of", before.repairOdds(), after.repairOdds()));
        all.add(new RulesDifference("Approval is needed above", before.approvalCostLimit(), after.approvalCostLimit()));
        all.add(new RulesDifference("Answer about data holds, h", before.dataAnswerHours(), after.dataAnswerHours()));
        all.add(new RulesDifference("Soak time, h", before.soakHours(), after.soakHours()));
        all.add(new RulesDifference("Reopening, days", before.reopenDays(), after.reopenDays()));
        all.add(new RulesDifference("Guard band", before.guardBand(), after.guardBand()));
        return all.stream().filter(d -> !d.before.equals(d.after)).toList();
    }

    private static String times(RulesText.Times times) {
        return "answer " + times.response() + ", fix " + times.fix();
    }

    private static String stops(RulesText rules) {
        return rules.stops().stream()
                .map(name -> WaitingFor.valueOf(name).words())
                .collect(Collectors.joining(", "));
    }
}
