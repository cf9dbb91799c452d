package org.benchtrail.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.junit.jupiter.api.Test;

/** What a gate says is missing leads to a place on the sheet. */
class RequirementPlacesTest {
    @Test
    void everyRequirement_hasAPlaceOfItsCodeOnTheSheet() {
        String sheet = String.join("\n", Sources.templates().values());
        Set<String> nowhere = new TreeSet<>();
        for (Requirement requirement : Requirements.all()) {
            if (!sheet.contains("id=\"" + requirement.code() + "\"")
                    && !sheet.contains("{#question v=v fill=fill id='" + requirement.code() + "'")) {
                nowhere.add(requirement.code());
            }
        }
        assertEquals(Set.of(), nowhere, "give the section that meets it this id in the step's template");
    }
}
