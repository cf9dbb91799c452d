package org.benchtrail.platform;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.qute.Engine;
import io.quarkus.qute.EngineBuilder;
import io.quarkus.qute.EvalContext;
import io.quarkus.qute.ReflectionValueResolver;
import io.quarkus.qute.Results;
import io.quarkus.qute.ValueResolver;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletionStage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Templates say the same with it as without: the engine alone is what they are held against. */
class OuterNamesTest {
    /** Comes last: whatever it is asked, every other resolver was asked before. */
    private static final class Last implements ValueResolver {
        private final List<String> asked = new ArrayList<>();

        @Override
        public int getPriority() {
            return Integer.MIN_VALUE;
        }

        @Override
        public boolean appliesTo(EvalContext context) {
            asked.add(context.getName());
            return false;
        }

        @Override
        public CompletionStage<Object> resolve(EvalContext context) {
            return Results.notFound(context);
        }
    }

    /** A thing of a page. */
    public record Thing(String name, Thing inner) {}

    private static EngineBuilder bare() {
        return Engine.builder()
                .addDefaults()
                .addValueResolver(new ReflectionValueResolver())
                .strictRendering(false);
    }

    private static String rendered(Engine engine, String template) {
        return engine.parse(template)
                .data("things", List.of(new Thing("fan", new Thing("blade", null)), new Thing("duct", null)))
                .data("name", "outer")
                .data("inner", "not of a thing")
                .data("nothing", null)
                .render();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{#for t in things}{t.name} {name} {/for} | fan outer duct outer",
                "{#for t in things}{#let name=t.name}{name}{/let}{name} {/for} | fanouter ductouter",
                "{#let name='set'}{#for t in things}{name}{t_count}{/for}{/let} | set1set2",
                "{#for t in things}{#let a=1}{#let b=2}{a}{b}{name}{/let}{/let} {/for} | 12outer 12outer",
                "{#for name in things}{name.name} {/for}{name} | fan duct outer",
                "{#for t in things}{unheard ?: 'none'} {/for} | none none",
                "{#for t in things}{nothing ?: 'none'} {/for} | none none",
                "{#for t in things}{#if inner}{inner} {/if}{/for} | not of a thing not of a thing",
                "{#for t in things}{t.inner.name ?: 'none'} {/for} | blade none",
                "{#let x=nothing}{x.name ?: 'none'}{/let} | none"
            })
    void names_areThoseThatTheEngineFinds(String template, String said) {
        assertEquals(said, rendered(bare().build(), template).strip());
        assertEquals(
                said,
                rendered(bare().addValueResolver(new OuterNames()).build(), template)
                        .strip());
    }

    @Test
    void outerName_isAskedOfNobodyElse() {
        String template = "{#for t in things}{#let a=1}{name}{a}{/let}{/for}";
        Last alone = new Last();
        rendered(bare().addValueResolver(alone).build(), template);
        assertEquals(List.of("name", "name", "name", "name"), alone.asked, "two levels, twice");
        Last beside = new Last();
        rendered(
                bare().addValueResolver(new OuterNames())
                        .addValueResolver(beside)
                        .build(),
                template);
        assertEquals(List.of(), beside.asked);
    }
}
