package org.benchtrail.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Directory;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.DeviceText;
import org.benchtrail.site.PlaceActs;

/** Loads the demo's places, teams and devices from a file. */
@ApplicationScoped
class SiteFile {
    private static final ObjectMapper MAPPER = YAMLMapper.builder().build();

    private final Scenarios scenarios;
    private final Directory people;
    private final PlaceActs places;
    private final DeviceBook devices;

    SiteFile(Scenarios scenarios, Directory people, PlaceActs places, DeviceBook devices) {
        this.scenarios = scenarios;
        this.people = people;
        this.places = places;
        this.devices = devices;
    }

    /** @param by account of who adds all of it */
    record Contents(
            String name,
            String by,
            List<PlaceActs.PlaceText> places,
            List<PlaceActs.TeamText> teams,
            List<DeviceText> devices) {}

    /** Loads all of it or nothing; what was loaded before is left alone. */
    @Transactional
    void load(String yaml) {
        Contents contents = read(yaml);
        if (scenarios.remember(contents.name())) {
            Actor by = people.worker(contents.by()).orElseThrow();
            contents.places().forEach(place -> places.addPlace(place, by));
            contents.teams().forEach(team -> places.addTeam(team, by));
            contents.devices().forEach(device -> devices.add(device, by));
        }
    }

    private static Contents read(String yaml) {
        try {
            return MAPPER.readValue(yaml, Contents.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the demo's site file is not readable", e);
        }
    }
}
